#include "lampwright_clock.h"

#include "lampwright_target.h"

#if LAMPWRIGHT_FITS_BOARD

#if defined(ARDUINO)

#include <Arduino.h>

void lampwright_clock_begin(void) {}

lampwright_ticks lampwright_clock_now(void) { return (lampwright_ticks)micros(); }

void lampwright_clock_wait(lampwright_ticks until) {
  while ((lampwright_ticks)(until - 1 - lampwright_clock_now()) < LAMPWRIGHT_HALF_TICKS) {
  }
}

/* Of an IDE's interrupts we know none. */
void lampwright_clock_sleep(lampwright_ticks until) { lampwright_clock_wait(until); }

#else

#include "lampwright_rp2040_registers.h"

/*
 * The timer counts microseconds, which the watchdog's tick makes of the crystal's 12 MHz. Its
 * interrupt is enabled, but masked: it ends a sleep, and no routine is called.
 */
void lampwright_clock_begin(void) {
  __asm__ volatile("cpsid i" ::: "memory");
  REGISTER(TIMER_INTE) = 1;
  REGISTER(NVIC_ISER) = IRQ_TIMER_0;
}

lampwright_ticks lampwright_clock_now(void) { return REGISTER(TIMER_TIMERAWL); }

static uint8_t is_over(lampwright_ticks instant) {
  return (lampwright_ticks)(lampwright_clock_now() - instant) < LAMPWRIGHT_HALF_TICKS;
}

void lampwright_clock_sleep(lampwright_ticks until) {
  if (is_over(until)) {
    return;
  }
  REGISTER(TIMER_ALARM0) = until;
  /* An alarm set too late would come after 71 minutes. */
  if (!is_over(until)) {
    __asm__ volatile("wfi" ::: "memory");
  }
  REGISTER(TIMER_ARMED) = 1;
  REGISTER(TIMER_INTR) = 1;
  REGISTER(NVIC_ICPR) = IRQ_TIMER_0;
}

void lampwright_clock_wait(lampwright_ticks until) {
  while (!is_over(until)) {
    lampwright_clock_sleep(until);
  }
}

#endif

#endif
