/*
 * Limits of the Lampwright player. Set them here or on the compiler's command line.
 */
#ifndef LAMPWRIGHT_CONFIG_H
#define LAMPWRIGHT_CONFIG_H

/* Most lamps that one piece of packed data may drive: 7 bytes of RAM each on an 8-bit controller. */
#ifndef LAMPWRIGHT_MAX_LAMPS
#define LAMPWRIGHT_MAX_LAMPS 10
#endif

/* 1: data may be longer than 65,535 bytes; places then take 32 bits of RAM. */
#ifndef LAMPWRIGHT_LONG_DATA
#if defined(__AVR__)
#define LAMPWRIGHT_LONG_DATA 0
#else
#define LAMPWRIGHT_LONG_DATA 1
#endif
#endif

/*
 * Bytes of a column number in the data: 1 for frames up to 256 bytes, 2 for larger ones, 0 for
 * whatever the data has. A fixed width makes the player smaller and faster.
 */
#ifndef LAMPWRIGHT_COLUMN_BYTES
#if defined(__AVR__)
#define LAMPWRIGHT_COLUMN_BYTES 1
#else
#define LAMPWRIGHT_COLUMN_BYTES 0
#endif
#endif

/* 1: plays by the C code on AVR too, not by lampwright_player_avr.S. */
#ifndef LAMPWRIGHT_PORTABLE
#define LAMPWRIGHT_PORTABLE 0
#endif

/* Room for situations: the most that data can ask for. */
#if !defined(LAMPWRIGHT_SITUATIONS) && !defined(__AVR__)
#define LAMPWRIGHT_INPUTS 254
#define LAMPWRIGHT_CENTRES 64
#define LAMPWRIGHT_SITUATIONS 254
#define LAMPWRIGHT_SLOTS 254
#define LAMPWRIGHT_CONDITION_BYTES 255
#define LAMPWRIGHT_TIME_BYTES 4
#endif

/* How packed data is declared and how one byte of it is read; the address is evaluated once. */
#if !defined(LAMPWRIGHT_READ) && !defined(__ASSEMBLER__)
#if defined(__AVR__)
#include <avr/pgmspace.h>
#define LAMPWRIGHT_DATA PROGMEM
#define LAMPWRIGHT_READ(address) pgm_read_byte(address)
#else
#define LAMPWRIGHT_DATA
#define LAMPWRIGHT_READ(address) (*(address))
#endif
#endif

#endif
