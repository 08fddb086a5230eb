#ifndef LAMPWRIGHT_WIRE_HOOK_H
#define LAMPWRIGHT_WIRE_HOOK_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Functions for you to write, where the controller is none of those that lampwright_wire_avr.c
 * serves, or where the configuration defines LAMPWRIGHT_EMIT_BYTES because you would rather send
 * the bytes another way.
 */

/*
 * Sends `count` bytes out on the line of `chain` (0 for the first), each most significant bit
 * first, with the times that lampwright_config.h states for the chain (LAMPWRIGHT_CHAIN_0_T0H_NS,
 * ...). The bytes stand in the pixels' own order. May return before they are out if it copies them
 * first. The line then stays low for LAMPWRIGHT_RESET_US at least before the same chain's next
 * byte.
 */
void lampwright_emit_bytes(uint8_t chain, const uint8_t *bytes, uint16_t count);

/*
 * Sets the driver outputs: one duty each, 0 fully off, 255 fully on. Only called where the
 * configuration has outputs.
 */
void lampwright_emit_outputs(const uint8_t *duties, uint16_t count);

/*
 * The time in microseconds from any start, wrapping at 2^32. It is what lampwright_show_due goes
 * by; where the loop paces its frames in another way, let it return 0.
 */
uint32_t lampwright_microseconds(void);

#ifdef __cplusplus
}
#endif

#endif
