#ifndef LAMPWRIGHT_TARGET_H
#define LAMPWRIGHT_TARGET_H

#include "lampwright_config.h"

/* 1: pins and timers of a known AVR are driven directly. 0: the functions of
 * lampwright_wire_hook.h. */
#if !defined(LAMPWRIGHT_EMIT_BYTES) &&                                                             \
    (defined(__AVR_ATmega328P__) || defined(__AVR_ATmega32U4__) || defined(__AVR_ATtiny85__))
#define LAMPWRIGHT_ON_AVR 1
#else
#define LAMPWRIGHT_ON_AVR 0
#endif

/*
 * Marks for a simulator that counts cycles: the general-purpose register 0 takes 1 as a frame
 * begins to be decoded, 2 when it is decoded, 3 when it is on the pins. Two cycles each; none
 * without LAMPWRIGHT_PROBE.
 */
#if defined(LAMPWRIGHT_PROBE) && defined(__AVR__)
#include <avr/io.h>
#define LAMPWRIGHT_MARK(number) (GPIOR0 = (number))
#else
#define LAMPWRIGHT_MARK(number) ((void)0)
#endif

#endif
