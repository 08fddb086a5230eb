#include "lampwright_outputs.h"

#include "lampwright_target.h"

#if LAMPWRIGHT_ON_AVR

#include <avr/io.h>

#include "lampwright_outputs_map.h"

#if LAMPWRIGHT_OUTPUTS > 6
#error "no controller that is driven directly has more than 6 PWM pins; see LAMPWRIGHT_EMIT_BYTES"
#endif

#if defined(ARDUINO) && LAMPWRIGHT_TIMER_TAKEN(0)
#error "timer 0 keeps the time of the hobby IDE's own functions: move the output to another timer"
#endif

#if LAMPWRIGHT_OUTPUTS > 0 && !LAMPWRIGHT_OUTPUT_PWM(0)
#pragma message("pins with PWM on this controller: " LAMPWRIGHT_PWM_PINS)
#error "output 0: that pin has no PWM; see the pins named above or in lampwright_outputs.h"
#endif
#if LAMPWRIGHT_OUTPUTS > 1 && !LAMPWRIGHT_OUTPUT_PWM(1)
#pragma message("pins with PWM on this controller: " LAMPWRIGHT_PWM_PINS)
#error "output 1: that pin has no PWM; see the pins named above or in lampwright_outputs.h"
#endif
#if LAMPWRIGHT_OUTPUTS > 2 && !LAMPWRIGHT_OUTPUT_PWM(2)
#pragma message("pins with PWM on this controller: " LAMPWRIGHT_PWM_PINS)
#error "output 2: that pin has no PWM; see the pins named above or in lampwright_outputs.h"
#endif
#if LAMPWRIGHT_OUTPUTS > 3 && !LAMPWRIGHT_OUTPUT_PWM(3)
#pragma message("pins with PWM on this controller: " LAMPWRIGHT_PWM_PINS)
#error "output 3: that pin has no PWM; see the pins named above or in lampwright_outputs.h"
#endif
#if LAMPWRIGHT_OUTPUTS > 4 && !LAMPWRIGHT_OUTPUT_PWM(4)
#pragma message("pins with PWM on this controller: " LAMPWRIGHT_PWM_PINS)
#error "output 4: that pin has no PWM; see the pins named above or in lampwright_outputs.h"
#endif
#if LAMPWRIGHT_OUTPUTS > 5 && !LAMPWRIGHT_OUTPUT_PWM(5)
#pragma message("pins with PWM on this controller: " LAMPWRIGHT_PWM_PINS)
#error "output 5: that pin has no PWM; see the pins named above or in lampwright_outputs.h"
#endif

#define BEGIN(output)                                                                              \
  LAMPWRIGHT_JOIN(DDR, LAMPWRIGHT_OUTPUT_##output##_PORT) |= 1                                     \
                                                             << LAMPWRIGHT_OUTPUT_##output##_BIT;  \
  LAMPWRIGHT_JOIN(LAMPWRIGHT_PWM_ON_, LAMPWRIGHT_OUTPUT_PIN(output))
#define DUTY(output) LAMPWRIGHT_JOIN(LAMPWRIGHT_PWM_DUTY_, LAMPWRIGHT_OUTPUT_PIN(output))

/*
 * The timers count up and down (phase-correct PWM, 8 bits): the pin is high for duty/255 of the
 * time, low throughout at 0 and high throughout at 255. Counting up only would leave a spike of
 * 1/256 at 0. One period takes 510 x 64 cycles: 490 Hz at 16 MHz, 245 Hz at 8 MHz. Timer 1 of the
 * ATtiny85 can only count up, but holds its pin low at 0 and high at 255 (datasheet, 12.2.2).
 */
void lampwright_outputs_begin(void) {
#if LAMPWRIGHT_TIMER_TAKEN(0)
  TCCR0A = 1 << WGM00;
  TCCR0B = 1 << CS01 | 1 << CS00;
#endif
#if defined(__AVR_ATtiny85__)
#if LAMPWRIGHT_TIMER_TAKEN(1)
  GTCCR = 1 << PWM1B;
  OCR1C = 255;
  TCCR1 = 1 << CS12 | 1 << CS11 | 1 << CS10;
#endif
#else
#if LAMPWRIGHT_TIMER_TAKEN(1)
  TCCR1A = 1 << WGM10;
  TCCR1B = 1 << CS11 | 1 << CS10;
#endif
#if LAMPWRIGHT_TIMER_TAKEN(2)
  TCCR2A = 1 << WGM20;
  TCCR2B = 1 << CS22;
#endif
#if LAMPWRIGHT_TIMER_TAKEN(3)
  TCCR3A = 1 << WGM30;
  TCCR3B = 1 << CS31 | 1 << CS30;
#endif
#endif
#if LAMPWRIGHT_OUTPUTS > 0
  DUTY(0) = 0;
  BEGIN(0);
#endif
#if LAMPWRIGHT_OUTPUTS > 1
  DUTY(1) = 0;
  BEGIN(1);
#endif
#if LAMPWRIGHT_OUTPUTS > 2
  DUTY(2) = 0;
  BEGIN(2);
#endif
#if LAMPWRIGHT_OUTPUTS > 3
  DUTY(3) = 0;
  BEGIN(3);
#endif
#if LAMPWRIGHT_OUTPUTS > 4
  DUTY(4) = 0;
  BEGIN(4);
#endif
#if LAMPWRIGHT_OUTPUTS > 5
  DUTY(5) = 0;
  BEGIN(5);
#endif
}

void lampwright_outputs_set(const uint8_t *duties) {
#if LAMPWRIGHT_OUTPUTS > 0
  DUTY(0) = duties[0];
#endif
#if LAMPWRIGHT_OUTPUTS > 1
  DUTY(1) = duties[1];
#endif
#if LAMPWRIGHT_OUTPUTS > 2
  DUTY(2) = duties[2];
#endif
#if LAMPWRIGHT_OUTPUTS > 3
  DUTY(3) = duties[3];
#endif
#if LAMPWRIGHT_OUTPUTS > 4
  DUTY(4) = duties[4];
#endif
#if LAMPWRIGHT_OUTPUTS > 5
  DUTY(5) = duties[5];
#endif
#if LAMPWRIGHT_OUTPUTS == 0
  (void)duties;
#endif
}

#else

#include "lampwright_wire_hook.h"

void lampwright_outputs_begin(void) {}

void lampwright_outputs_set(const uint8_t *duties) {
#if LAMPWRIGHT_OUTPUTS > 0
  lampwright_emit_outputs(duties, LAMPWRIGHT_OUTPUTS);
#else
  (void)duties;
#endif
}

#endif
