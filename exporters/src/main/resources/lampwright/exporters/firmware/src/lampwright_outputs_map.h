#ifndef LAMPWRIGHT_OUTPUTS_MAP_H
#define LAMPWRIGHT_OUTPUTS_MAP_H

#include "lampwright_config.h"
#include "lampwright_pins.h"

/*
 * For each pin with PWM: LAMPWRIGHT_PWM_B1 is 1 + the number of its timer, and LAMPWRIGHT_PWM_ON_B1
 * and LAMPWRIGHT_PWM_DUTY_B1 connect the pin to the timer and name its duty register.
 */
#if defined(__AVR_ATmega328P__)
#define LAMPWRIGHT_PWM_PINS "D5 D6 B1 B2 B3 D3"
#define LAMPWRIGHT_PWM_D6 1
#define LAMPWRIGHT_PWM_ON_D6 TCCR0A |= 1 << COM0A1
#define LAMPWRIGHT_PWM_DUTY_D6 OCR0A
#define LAMPWRIGHT_PWM_D5 1
#define LAMPWRIGHT_PWM_ON_D5 TCCR0A |= 1 << COM0B1
#define LAMPWRIGHT_PWM_DUTY_D5 OCR0B
#define LAMPWRIGHT_PWM_B1 2
#define LAMPWRIGHT_PWM_ON_B1 TCCR1A |= 1 << COM1A1
#define LAMPWRIGHT_PWM_DUTY_B1 OCR1A
#define LAMPWRIGHT_PWM_B2 2
#define LAMPWRIGHT_PWM_ON_B2 TCCR1A |= 1 << COM1B1
#define LAMPWRIGHT_PWM_DUTY_B2 OCR1B
#define LAMPWRIGHT_PWM_B3 3
#define LAMPWRIGHT_PWM_ON_B3 TCCR2A |= 1 << COM2A1
#define LAMPWRIGHT_PWM_DUTY_B3 OCR2A
#define LAMPWRIGHT_PWM_D3 3
#define LAMPWRIGHT_PWM_ON_D3 TCCR2A |= 1 << COM2B1
#define LAMPWRIGHT_PWM_DUTY_D3 OCR2B
#elif defined(__AVR_ATmega32U4__)
#define LAMPWRIGHT_PWM_PINS "B7 D0 B5 B6 C6"
#define LAMPWRIGHT_PWM_B7 1
#define LAMPWRIGHT_PWM_ON_B7 TCCR0A |= 1 << COM0A1
#define LAMPWRIGHT_PWM_DUTY_B7 OCR0A
#define LAMPWRIGHT_PWM_D0 1
#define LAMPWRIGHT_PWM_ON_D0 TCCR0A |= 1 << COM0B1
#define LAMPWRIGHT_PWM_DUTY_D0 OCR0B
#define LAMPWRIGHT_PWM_B5 2
#define LAMPWRIGHT_PWM_ON_B5 TCCR1A |= 1 << COM1A1
#define LAMPWRIGHT_PWM_DUTY_B5 OCR1A
#define LAMPWRIGHT_PWM_B6 2
#define LAMPWRIGHT_PWM_ON_B6 TCCR1A |= 1 << COM1B1
#define LAMPWRIGHT_PWM_DUTY_B6 OCR1B
#define LAMPWRIGHT_PWM_C6 4
#define LAMPWRIGHT_PWM_ON_C6 TCCR3A |= 1 << COM3A1
#define LAMPWRIGHT_PWM_DUTY_C6 OCR3A
#elif defined(__AVR_ATtiny85__)
#define LAMPWRIGHT_PWM_PINS "B0 B1 B4"
#define LAMPWRIGHT_PWM_B0 1
#define LAMPWRIGHT_PWM_ON_B0 TCCR0A |= 1 << COM0A1
#define LAMPWRIGHT_PWM_DUTY_B0 OCR0A
#define LAMPWRIGHT_PWM_B1 1
#define LAMPWRIGHT_PWM_ON_B1 TCCR0A |= 1 << COM0B1
#define LAMPWRIGHT_PWM_DUTY_B1 OCR0B
#define LAMPWRIGHT_PWM_B4 2
#define LAMPWRIGHT_PWM_ON_B4 GTCCR |= 1 << COM1B1
#define LAMPWRIGHT_PWM_DUTY_B4 OCR1B
#endif

#define LAMPWRIGHT_OUTPUT_PIN(output)                                                              \
  LAMPWRIGHT_JOIN(LAMPWRIGHT_OUTPUT_##output##_PORT, LAMPWRIGHT_OUTPUT_##output##_BIT)
#define LAMPWRIGHT_OUTPUT_PWM(output)                                                              \
  LAMPWRIGHT_JOIN(LAMPWRIGHT_PWM_, LAMPWRIGHT_OUTPUT_PIN(output))
#define LAMPWRIGHT_OUTPUT_ON_TIMER(output, timer)                                                  \
  (LAMPWRIGHT_OUTPUTS > output && LAMPWRIGHT_OUTPUT_PWM(output) == 1 + (timer))

/* 1 if an output takes that timer. */
#if LAMPWRIGHT_OUTPUTS == 0
#define LAMPWRIGHT_TIMER_TAKEN(timer) 0
#else
#define LAMPWRIGHT_TIMER_TAKEN(timer)                                                              \
  (LAMPWRIGHT_OUTPUT_ON_TIMER(0, timer) || LAMPWRIGHT_OUTPUT_ON_TIMER(1, timer) ||                 \
   LAMPWRIGHT_OUTPUT_ON_TIMER(2, timer) || LAMPWRIGHT_OUTPUT_ON_TIMER(3, timer) ||                 \
   LAMPWRIGHT_OUTPUT_ON_TIMER(4, timer) || LAMPWRIGHT_OUTPUT_ON_TIMER(5, timer))
#endif

#endif
