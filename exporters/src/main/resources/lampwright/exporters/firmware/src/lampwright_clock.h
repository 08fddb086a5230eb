#ifndef LAMPWRIGHT_CLOCK_H
#define LAMPWRIGHT_CLOCK_H

#include <stdint.h>

#include "lampwright_target.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The time base of the frame clock: a hardware counter that is read; it needs no interrupt. On AVR
 * a timer that no driver output uses; on RP2040 its timer of 1 us; in a hobby IDE the IDE's own
 * micros(); else lampwright_microseconds(). LAMPWRIGHT_TICK_MILLIHERTZ is its tick rate.
 */

/* A time in ticks, modulo the range of its type. */
#if !defined(LAMPWRIGHT_TICKS)
#define LAMPWRIGHT_TICKS uint16_t
#endif
typedef LAMPWRIGHT_TICKS lampwright_ticks;
#define LAMPWRIGHT_HALF_TICKS (lampwright_ticks)((lampwright_ticks)~0UL / 2 + 1)

/* Starts the counter. Call once. */
void lampwright_clock_begin(void);

/*
 * The time in ticks. Where the counter has 8 bits (README.md says so), a call must come within 256
 * ticks of the last one, or the time falls back by as much.
 */
lampwright_ticks lampwright_clock_now(void);

#if !defined(LAMPWRIGHT_CLOCK_WAITS)
#define LAMPWRIGHT_CLOCK_WAITS 0
#endif
#if LAMPWRIGHT_CLOCK_WAITS
/* Sleeps until an instant that lies less than half of the range away. */
void lampwright_clock_wait(lampwright_ticks until);

/* The same, but an input that has something to read ends the sleep too. */
void lampwright_clock_sleep(lampwright_ticks until);
#endif

#ifdef __cplusplus
}
#endif

#endif
