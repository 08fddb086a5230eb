#ifndef LAMPWRIGHT_INPUTS_H
#define LAMPWRIGHT_INPUTS_H

#include <stdint.h>

#include "lampwright_player.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Reads the inputs of the model: servo pulses by interrupt routines (AVR) or state machines
 * (RP2040), switches by their pins; on other controllers by the functions of
 * lampwright_inputs_hook.h. Pins of switches to ground have their pull-up on.
 */

/* Makes the pins ready. Call once, after lampwright_show_begin; on AVR before interrupts are
 * enabled. */
void lampwright_inputs_begin(void);

/*
 * Hands on what was read since the last call. Call as often as can be: of pulses on one channel
 * that end between two calls only the last is seen, and none if the next has begun by then.
 */
void lampwright_inputs_read(const lampwright_player *player);

#ifdef __cplusplus
}
#endif

#endif
