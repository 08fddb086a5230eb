#ifndef LAMPWRIGHT_INPUTS_HOOK_H
#define LAMPWRIGHT_INPUTS_HOOK_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Functions for you to write, beside those of lampwright_wire_hook.h: what the inputs of the model
 * read. Inputs are numbered from 0 in the order of the project, as lampwright_config.h lists them.
 * An example of each is in README.md and in the examples.
 */

/* Makes the pins ready. lampwright_inputs_begin calls it once. */
void lampwright_begin_inputs(void);

/*
 * The width in microseconds of the last servo pulse that ended on a channel since the last call for
 * it; 0 if none has. Widths of no servo are ignored, so noise may be handed on.
 */
uint16_t lampwright_servo_width(uint8_t input);

/* The level of a switch's pin now: 1 high, 0 low, whether it is to ground or not. */
uint8_t lampwright_switch_level(uint8_t input);

#ifdef __cplusplus
}
#endif

#endif
