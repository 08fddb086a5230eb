#ifndef LAMPWRIGHT_WIRE_HOOK_H
#define LAMPWRIGHT_WIRE_HOOK_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Functions for you to write: Lampwright has no driver for this controller. An example of each is
 * in README.md and in the examples.
 */

/*
 * Sends `count` bytes out on the line of `chain` (0 for the first), each most significant bit
 * first, with the times of the chain in lampwright_config.h
 * (LAMPWRIGHT_CHAIN_0_T0H_MIN_NS to LAMPWRIGHT_CHAIN_0_T0H_MAX_NS, and so on). The bytes are in the
 * pixels' own order. May return before they are out if it copies them first. The line then stays
 * low for LAMPWRIGHT_RESET_US at least before the same chain's next byte.
 */
void lampwright_emit_bytes(uint8_t chain, const uint8_t *bytes, uint16_t count);

/*
 * Sets the driver outputs: one duty each, 0 fully off, 255 fully on. Only called where the
 * configuration has outputs.
 */
void lampwright_emit_outputs(const uint8_t *duties, uint16_t count);

/*
 * The time in microseconds from any start, wrapping at 2^32. lampwright_show_due goes by it; where
 * the loop paces its frames in another way, let it return 0. In a hobby IDE its own micros() is
 * used instead.
 */
uint32_t lampwright_microseconds(void);

#ifdef __cplusplus
}
#endif

#endif
