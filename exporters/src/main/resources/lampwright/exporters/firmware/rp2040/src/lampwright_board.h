#ifndef LAMPWRIGHT_BOARD_H
#define LAMPWRIGHT_BOARD_H

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/*
 * What is fitted to the board's pins. In a UF2 file made by Lampwright these are bytes of its table
 * (docs/formats.md), low byte first: keep order and sizes.
 */
#define LAMPWRIGHT_BOARD_CHAINS 8
#define LAMPWRIGHT_BOARD_OUTPUTS 16
#define LAMPWRIGHT_BOARD_INPUTS 32

/* Two PIO blocks of four state machines: one for each chain and each receiver channel. */
#define LAMPWRIGHT_BOARD_MACHINES 8

/* A chain. Its times are in steps of 40 ns (`pio_divider` periods of 8 ns), 1 to 16 each. */
typedef struct {
  uint8_t pin;    /* GP number */
  uint8_t high;   /* every bit: high for as long */
  uint8_t high_1; /* a 1: high for as long again */
  uint8_t low_0;  /* a 0: low instead */
  uint8_t low;    /* every bit: low for as long, in the end */
  uint8_t unused;
  uint16_t bytes;
  uint32_t busy_us; /* from the first bit until its pixels can take the next frame */
} lampwright_board_chain;

/* What an input is; a switch has a pull-down, one to ground a pull-up. */
#define LAMPWRIGHT_BOARD_CHANNEL 0
#define LAMPWRIGHT_BOARD_SWITCH 1
#define LAMPWRIGHT_BOARD_SWITCH_TO_GROUND 2

typedef struct {
  uint8_t pin; /* GP number */
  uint8_t kind;
} lampwright_board_input;

typedef struct {
  uint8_t chains;
  uint8_t outputs;
  uint16_t pio_divider;
  uint16_t pwm_divider; /* in sixteenths */
  uint16_t pwm_top;
  lampwright_board_chain chain[LAMPWRIGHT_BOARD_CHAINS];
  uint8_t output_pin[LAMPWRIGHT_BOARD_OUTPUTS];
  uint8_t inputs; /* read where situations are played */
  uint8_t unused[3];
  lampwright_board_input input[LAMPWRIGHT_BOARD_INPUTS];
} lampwright_board;

extern const lampwright_board *const lampwright_fitted;

#ifdef __cplusplus
}
#endif

#endif
