#ifndef LAMPWRIGHT_TARGET_H
#define LAMPWRIGHT_TARGET_H

#include "lampwright_config.h"

/* The functions of lampwright_wire_hook.h are yours, so this folder fits any board. */
#define LAMPWRIGHT_FITS_BOARD 1

/* How often the frame clock ticks: every 64 us. */
#define LAMPWRIGHT_TICK_MILLIHERTZ 15625000

/* Marks for a simulator that counts cycles; there is none for this controller. */
#define LAMPWRIGHT_MARK(number) ((void)0)

#endif
