/* Tells the time as the cores of hobby IDEs do: timer 0 at a 64th of the clock, overflows counted. */
#include <Arduino.h>

static volatile unsigned long overflows;

ISR(TIMER0_OVF_vect) { overflows++; }

unsigned long micros() {
  uint8_t saved = SREG;
  cli();
  unsigned long count = overflows;
  uint8_t ticks = TCNT0;
#if defined(TIFR0)
  bool pending = TIFR0 & 1 << TOV0;
#else
  bool pending = TIFR & 1 << TOV0;
#endif
  if (pending && ticks < 255) {
    count++;
  }
  SREG = saved;
  return (count * 256 + ticks) * (64 / (F_CPU / 1000000UL));
}

int main() {
  TCCR0A = 1 << WGM01 | 1 << WGM00;
  TCCR0B = 1 << CS01 | 1 << CS00;
#if defined(TIMSK0)
  TIMSK0 |= 1 << TOIE0;
#else
  TIMSK |= 1 << TOIE0;
#endif
  sei();
  setup();
  for (;;) {
    loop();
  }
}
