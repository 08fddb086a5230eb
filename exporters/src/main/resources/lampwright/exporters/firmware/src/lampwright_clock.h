#ifndef LAMPWRIGHT_CLOCK_H
#define LAMPWRIGHT_CLOCK_H

#include <stdint.h>

#include "lampwright_target.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The time base of the frame clock: a hardware counter that is read; it needs no interrupt. On AVR
 * a timer that no driver output uses; in a hobby IDE the IDE's own micros(); else
 * lampwright_microseconds(). LAMPWRIGHT_TICK_MILLIHERTZ is its tick rate.
 */

/* Starts the counter. Call once. */
void lampwright_clock_begin(void);

/*
 * The time in ticks, modulo 2^16. Where the counter has 8 bits (README.md says so), a call must
 * come within 256 ticks of the last one, or the time falls back by as much.
 */
uint16_t lampwright_clock_now(void);

#ifdef __cplusplus
}
#endif

#endif
