#ifndef LAMPWRIGHT_TARGET_H
#define LAMPWRIGHT_TARGET_H

#include "lampwright_config.h"

/* You write the functions of lampwright_wire_hook.h, so this folder fits any board. */
#define LAMPWRIGHT_FITS_BOARD 1

/* Tick of the frame clock: 64 us. */
#define LAMPWRIGHT_TICK_MILLIHERTZ 15625000

/* Marks for a simulator that counts cycles; there is none for this controller. */
#define LAMPWRIGHT_MARK(number) ((void)0)

#endif
