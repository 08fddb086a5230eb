/* The firmware of the tests: one scene, played for ever; with TEST_BUSY an interrupt beside it. */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/pgmspace.h>

#include "lampwright_show.h"
#include "table.h"

#if defined(TEST_BUSY)
/*
 * An interrupt routine that is busy for about TEST_BUSY us, about every four times that, and never
 * in step with the frames. With TEST_BUSY_BIT it also flips another pin of port B each time.
 */
ISR(TIMER0_COMPA_vect) {
#if defined(TEST_BUSY_BIT)
  static uint8_t left_as;
  while ((PORTB ^ left_as) & 1 << TEST_BUSY_BIT) {
    /* the wire driver has undone the last change: stop, and the prover misses the frames */
  }
  left_as ^= 1 << TEST_BUSY_BIT;
  PORTB ^= 1 << TEST_BUSY_BIT;
#endif
  __builtin_avr_delay_cycles(TEST_BUSY * (F_CPU / 1000000));
}
static void start_busy(void) {
#if defined(TEST_BUSY_BIT)
  DDRB |= 1 << TEST_BUSY_BIT;
#endif
  TCCR0A = 1 << WGM01;
  TCCR0B = 1 << CS01; /* 8 cycles a tick */
  OCR0A = (uint8_t)(TEST_BUSY * (F_CPU / 1000000) * 4 / 8 + 3);
#if defined(__AVR_ATtiny85__)
  TIMSK |= 1 << OCIE0A;
#else
  TIMSK0 |= 1 << OCIE0A;
#endif
}
#else
static void start_busy(void) {}
#endif

#if LAMPWRIGHT_CLOCK_TIMER < 0
/* A time of the builder's own making, for lack of a timer: it goes on a little at each look. */
uint32_t lampwright_microseconds(void) {
  static uint32_t now;
  now += 4;
  return now;
}
#endif

int main(void) {
  lampwright_show_begin();
  start_busy();
#if !defined(TEST_OFF)
  sei();
#endif
  lampwright_show_open(test_table, sizeof test_table, 0);
  for (;;) {
#if defined(TEST_UNPACED)
    lampwright_show_frame();
#endif
    if (lampwright_show_due(LAMPWRIGHT_RATE(TEST_MILLIHERTZ))) {
      lampwright_show_frame();
    }
  }
}
