#include "lampwright_clock.h"

#if defined(ARDUINO)
#include <Arduino.h>
#else
#include "lampwright_wire_hook.h"
#define micros lampwright_microseconds
#endif

void lampwright_clock_begin(void) {}

uint16_t lampwright_clock_now(void) { return (uint16_t)(micros() >> 6); }
