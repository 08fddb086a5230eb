#ifndef LAMPWRIGHT_WIRE_H
#define LAMPWRIGHT_WIRE_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The wire driver: takes a frame's bytes to the pins of the chains.
 *
 * lampwright_config.h says which pin each chain has. On an ATmega328P, ATmega32U4 or ATtiny85 the
 * bits are timed by lampwright_wire_avr.c. On any other controller, or where the configuration
 * defines LAMPWRIGHT_EMIT_BYTES, lampwright_wire_hook.c hands the bytes to functions of yours
 * (lampwright_wire_hook.h).
 */

/* Makes each chain's pin an output and sets it low. Call once, before the first send. */
void lampwright_wire_begin(void);

/*
 * Sends the chains' bytes, chain after chain, out of a frame as the player leaves it:
 * LAMPWRIGHT_CHAIN_0_BYTES bytes, then those of chain 1, and so on. First keeps every line low for
 * LAMPWRIGHT_RESET_US, so that pixels show one frame before they take the next, however soon it
 * comes.
 *
 * Interrupts: with LAMPWRIGHT_INTERRUPTS 1 they are held off for at most two bits at a time; with
 * LAMPWRIGHT_INTERRUPTS 0 for the whole of each chain. lampwright_wire_avr.c states the budget.
 */
void lampwright_wire_send(const uint8_t *frame);

#ifdef __cplusplus
}
#endif

#endif
