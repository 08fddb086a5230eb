#ifndef LAMPWRIGHT_TARGET_H
#define LAMPWRIGHT_TARGET_H

#include <stdint.h>

/* What this folder was exported for: its registers are those of no other controller. */
#if !defined(__ARM_ARCH_6M__)
#error "made for the RP2040: select a board with it, or compile with -mcpu=cortex-m0plus -mthumb"
#define LAMPWRIGHT_FITS_BOARD 0
#elif defined(ARDUINO) && defined(F_CPU) && F_CPU != 125000000
#error "made for 125 MHz: select that CPU speed; the times of the data lines depend on it"
#define LAMPWRIGHT_FITS_BOARD 0
#else
#define LAMPWRIGHT_FITS_BOARD 1
#endif

/* The frame clock: microseconds in 32 bits. */
#define LAMPWRIGHT_TICK_MILLIHERTZ 1000000000UL
#define LAMPWRIGHT_TICKS uint32_t
#define LAMPWRIGHT_CLOCK_WAITS 1

/* Marks for a simulator that counts cycles; there is none for this controller. */
#define LAMPWRIGHT_MARK(number) ((void)0)

#endif
