#ifndef LAMPWRIGHT_CONFIG_H
#define LAMPWRIGHT_CONFIG_H

/*
 * What is fitted to the model, and on which pins. Pins may be changed by hand: a port letter and a
 * bit, as in the controller's datasheet.
 */

/* Chain 0: 8 pixels, sk6812-rgbw. */
#define LAMPWRIGHT_CHAINS 1
#define LAMPWRIGHT_CHAIN_0_PORT B
#define LAMPWRIGHT_CHAIN_0_BIT 0
#define LAMPWRIGHT_CHAIN_0_BYTES 32
#define LAMPWRIGHT_CHAIN_0_T0H_NS 300
#define LAMPWRIGHT_CHAIN_0_T0L_NS 900
#define LAMPWRIGHT_CHAIN_0_T1H_NS 600
#define LAMPWRIGHT_CHAIN_0_T1L_NS 600
#define LAMPWRIGHT_CHAIN_0_TOLERANCE_NS 150

/* The bytes of every chain, in order. */
#define LAMPWRIGHT_CHAIN_BYTES                                                                     \
  { LAMPWRIGHT_CHAIN_0_BYTES }

/* The longest reset of any chain's pixels, in microseconds. */
#define LAMPWRIGHT_RESET_US 80

/* Driver outputs: none. */
#define LAMPWRIGHT_OUTPUTS 0

/* Every chain's bytes, then one byte for each driver output. */
#define LAMPWRIGHT_FRAME_BYTES 32

/*
 * 1: interrupts are let in between bits. 0: they are held off while a chain is sent. See
 * "Interrupts" in README.md.
 */
#define LAMPWRIGHT_INTERRUPTS 1

/* The player's limits: lamps, bytes of a frame, and whether packed data may pass 65,535 bytes. */
#define LAMPWRIGHT_MAX_LAMPS 8
#define LAMPWRIGHT_MAX_FRAME_BYTES LAMPWRIGHT_FRAME_BYTES
#define LAMPWRIGHT_LONG_DATA 0
#define LAMPWRIGHT_COLUMN_BYTES 1
#define LAMPWRIGHT_PORTABLE 0

/* How packed data is declared and how one byte of it is read. */
#if defined(__ASSEMBLER__)
/* assembly reads it in its own way */
#elif defined(__AVR__)
#include <avr/pgmspace.h>
#define LAMPWRIGHT_DATA PROGMEM
#define LAMPWRIGHT_READ(address) pgm_read_byte(address)
#else
#define LAMPWRIGHT_DATA
#define LAMPWRIGHT_READ(address) (*(address))
#endif

#endif
