#ifndef LAMPWRIGHT_CLOCK_H
#define LAMPWRIGHT_CLOCK_H

#include <stdint.h>

#include "lampwright_outputs_map.h"
#include "lampwright_target.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The time base of the frame clock: a hardware counter that is read; it needs no interrupt.
 *
 * On AVR it is the first timer in this order that no driver output takes: ATmega328P 1, 2, 0;
 * ATmega32U4 3, 1, 0; ATtiny85 0, 1; or the one that the configuration names as
 * LAMPWRIGHT_CLOCK_TIMER. It ticks once in 1,024 cycles: 64 us at 16 MHz, 128 us at 8 MHz.
 * With any other controller the time is that of lampwright_microseconds(), in a hobby IDE that of
 * its own micros(), in ticks of 64 us.
 */
#if defined(LAMPWRIGHT_CLOCK_TIMER) && LAMPWRIGHT_CLOCK_TIMER < 0
#define LAMPWRIGHT_TICK_MILLIHERTZ 15625000
#elif defined(ARDUINO) || !LAMPWRIGHT_ON_AVR
#undef LAMPWRIGHT_CLOCK_TIMER
#define LAMPWRIGHT_CLOCK_TIMER -1
#define LAMPWRIGHT_TICK_MILLIHERTZ 15625000
#else
#define LAMPWRIGHT_TICK_MILLIHERTZ (F_CPU * 1000ULL / 1024)
#if defined(LAMPWRIGHT_CLOCK_TIMER)
/* the configuration has chosen one */
#elif defined(__AVR_ATmega328P__) && !LAMPWRIGHT_TIMER_TAKEN(1)
#define LAMPWRIGHT_CLOCK_TIMER 1
#elif defined(__AVR_ATmega328P__) && !LAMPWRIGHT_TIMER_TAKEN(2)
#define LAMPWRIGHT_CLOCK_TIMER 2
#elif defined(__AVR_ATmega32U4__) && !LAMPWRIGHT_TIMER_TAKEN(3)
#define LAMPWRIGHT_CLOCK_TIMER 3
#elif defined(__AVR_ATmega32U4__) && !LAMPWRIGHT_TIMER_TAKEN(1)
#define LAMPWRIGHT_CLOCK_TIMER 1
#elif !LAMPWRIGHT_TIMER_TAKEN(0)
#define LAMPWRIGHT_CLOCK_TIMER 0
#elif defined(__AVR_ATtiny85__) && !LAMPWRIGHT_TIMER_TAKEN(1)
#define LAMPWRIGHT_CLOCK_TIMER 1
#endif
#endif

/* Starts the counter. Call once. */
void lampwright_clock_begin(void);

/*
 * The time in ticks, modulo 2^16. Where the counter has 8 bits, a call must come within 256 ticks
 * of the last one (16 ms at 16 MHz, 33 ms at 8 MHz), or the time falls back by as much.
 */
uint16_t lampwright_clock_now(void);

#ifdef __cplusplus
}
#endif

#endif
