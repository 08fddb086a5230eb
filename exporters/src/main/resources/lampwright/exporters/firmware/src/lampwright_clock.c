#include "lampwright_clock.h"

#if !defined(LAMPWRIGHT_CLOCK_TIMER)

#error "outputs take every timer; the frame clock needs one: see LAMPWRIGHT_CLOCK_TIMER"

#elif LAMPWRIGHT_CLOCK_TIMER >= 0 && LAMPWRIGHT_TIMER_TAKEN(LAMPWRIGHT_CLOCK_TIMER)

#error "LAMPWRIGHT_CLOCK_TIMER names a timer that a driver output takes"

#elif LAMPWRIGHT_CLOCK_TIMER < 0

#if defined(ARDUINO)
#include <Arduino.h>
#else
#include "lampwright_wire_hook.h"
#define micros lampwright_microseconds
#endif

void lampwright_clock_begin(void) {}

uint16_t lampwright_clock_now(void) { return (uint16_t)(micros() >> 6); }

#else

#include <avr/interrupt.h>
#include <avr/io.h>

/* The mode is set as well as the rate: a boot loader may have left the timer in use. */
void lampwright_clock_begin(void) {
#if LAMPWRIGHT_CLOCK_TIMER == 0
  TCCR0A = 0;
  TCCR0B = 1 << CS02 | 1 << CS00;
#elif LAMPWRIGHT_CLOCK_TIMER == 1 && defined(__AVR_ATtiny85__)
  TCCR1 = 1 << CS13 | 1 << CS11 | 1 << CS10;
#elif LAMPWRIGHT_CLOCK_TIMER == 1
  TCCR1A = 0;
  TCCR1B = 1 << CS12 | 1 << CS10;
#elif LAMPWRIGHT_CLOCK_TIMER == 2
  TCCR2A = 0;
  TCCR2B = 1 << CS22 | 1 << CS21 | 1 << CS20;
#else
  TCCR3A = 0;
  TCCR3B = 1 << CS32 | 1 << CS30;
#endif
}

#define COUNT LAMPWRIGHT_JOIN(TCNT, LAMPWRIGHT_CLOCK_TIMER)

#if (LAMPWRIGHT_CLOCK_TIMER == 1 && !defined(__AVR_ATtiny85__)) || LAMPWRIGHT_CLOCK_TIMER == 3

/* The halves of a 16-bit count are read through a register that interrupt routines may use too. */
uint16_t lampwright_clock_now(void) {
  uint8_t saved = SREG;
  uint16_t now;
  cli();
  now = COUNT;
  SREG = saved;
  return now;
}

#else

uint16_t lampwright_clock_now(void) {
  static uint16_t now; /* its low byte is the count when it was last read */
  now += (uint8_t)(COUNT - (uint8_t)now);
  return now;
}

#endif

#endif
