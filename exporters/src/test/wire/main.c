/* The firmware of the tests: the first scene, played for ever; with TEST_BUSY an interrupt beside it. */
#include <avr/interrupt.h>
#include <avr/io.h>

#include "lampwright_scenes.h"
#include "lampwright_show.h"

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

int main(void) {
  lampwright_show_begin();
  start_busy();
#if !defined(TEST_OFF)
  sei();
#endif
#if defined(TEST_DIMMED)
  lampwright_show_brightness(TEST_DIMMED);
#endif
  lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
  for (;;) {
#if defined(TEST_UNPACED)
    lampwright_show_frame();
#endif
    if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_FIRST_MILLIHERTZ))) {
      lampwright_show_frame();
    }
  }
}
