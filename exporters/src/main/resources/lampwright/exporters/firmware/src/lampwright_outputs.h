#ifndef LAMPWRIGHT_OUTPUTS_H
#define LAMPWRIGHT_OUTPUTS_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The driver outputs: one duty byte each, 0 fully off, 255 fully on, without a spike at either end.
 *
 * On AVR each stands on a pin with a hardware PWM channel:
 *
 *   ATmega328P   timer 0: D6, D5   timer 1: B1, B2   timer 2: B3, D3
 *   ATmega32U4   timer 0: B7, D0   timer 1: B5, B6   timer 3: C6
 *   ATtiny85     timer 0: B0, B1   timer 1: B4
 *
 * (Source: the datasheets' pin descriptions, OC0A, OC0B and so on.) Each used timer is taken whole.
 * The frame clock needs one timer that no output uses; see lampwright_clock.h.
 */

/* Starts the timers with every output off. Call once. */
void lampwright_outputs_begin(void);

/* Sets all outputs from LAMPWRIGHT_OUTPUTS duty bytes. */
void lampwright_outputs_set(const uint8_t *duties);

#ifdef __cplusplus
}
#endif

#endif
