#ifndef LAMPWRIGHT_WIRE_H
#define LAMPWRIGHT_WIRE_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The line driver: sends bytes to the pins of the chains. lampwright_show.h calls it. */

/* Makes each chain's pin an output and sets it low. Call once, before anything is sent. */
void lampwright_wire_begin(void);

/*
 * Keeps every line low for LAMPWRIGHT_RESET_US, so that pixels show one frame before they take the
 * next, however soon it comes. Call before the first chain of each frame. Your own driver must do
 * this itself.
 */
void lampwright_wire_rest(void);

/* Number of bytes of a chain. */
uint16_t lampwright_wire_bytes(uint8_t chain);

/*
 * Sends the bytes of a chain.
 *
 * Interrupts, on AVR: with LAMPWRIGHT_INTERRUPTS 1 they are held off for at most two bits at a
 * time; with LAMPWRIGHT_INTERRUPTS 0 for the whole of the chain. README.md lists the limits.
 */
void lampwright_wire_chain(uint8_t chain, const uint8_t *bytes);

#ifdef __cplusplus
}
#endif

#endif
