/*
 * Scene harbour of the project "Pilot boat",
 * exported by Lampwright. To change it, edit the project.
 *
 * 4 frames of 8 bytes; 50 frames/s (20000 us per frame), loops.
 *
 * The table takes 32 bytes of program memory:
 *   ATmega328P           0.1 % of 32256 bytes of free flash
 *   ATmega32U4           0.2 % of 28672 bytes of free flash
 *   ATtiny85             0.4 % of 8192 bytes of free flash
 *   RP2040               0.1 % of 2097152 bytes of free flash
 *   ESP32                0.1 % of 1310720 bytes of free flash
 *   STM32                0.1 % of 65536 bytes of free flash
 *   SAMD21               0.1 % of 253952 bytes of free flash
 *
 * Bytes of a frame, 0 for dark to 255 for full duty:
 *   bytes 0 to 3         chain mast: 1 pixel, each green, red, blue, white
 *                          pixel 0: lamp top
 *   bytes 4 to 6         chain rail: 1 pixel, each green, red, blue
 *                          pixel 0: lamp side
 *   byte 7               output stern: lamp stern-lamp
 *
 * To play it: every LW_harbour_FRAME_US microseconds, copy the next frame with
 * lw_harbour_frame(). Send each chain its bytes, which begin at its OFFSET, in the
 * order in which they are stored, most significant bit first; set each output's PWM
 * duty to its byte (0 to 255).
 */
#ifndef LW_harbour_INCLUDED
#define LW_harbour_INCLUDED

#include <stddef.h>
#include <stdint.h>
#include <string.h>
#if defined(__AVR__)
#include <avr/pgmspace.h>
#define LW_harbour_MEMORY PROGMEM
#else
#define LW_harbour_MEMORY
#endif

#define LW_harbour_FRAME_COUNT 4U
#define LW_harbour_FRAME_BYTES 8U
#define LW_harbour_TABLE_BYTES 32U

#define LW_harbour_FRAME_US 20000UL
#define LW_harbour_FPS_NUMERATOR 50UL
#define LW_harbour_FPS_DENOMINATOR 1UL

/* 1: loops; 0: plays once. */
#define LW_harbour_LOOP 1

/* Identifies this export; the .c has the same number. */
#define LW_harbour_EXPORT 0xBF7FEED5UL

#define LW_harbour_CHAIN_mast_OFFSET 0U
#define LW_harbour_CHAIN_mast_BYTES 4U
#define LW_harbour_CHAIN_mast_PIXELS 1U
#define LW_harbour_CHAIN_mast_PIXEL_BYTES 4U

#define LW_harbour_CHAIN_rail_OFFSET 4U
#define LW_harbour_CHAIN_rail_BYTES 3U
#define LW_harbour_CHAIN_rail_PIXELS 1U
#define LW_harbour_CHAIN_rail_PIXEL_BYTES 3U

#define LW_harbour_OUTPUT_stern_OFFSET 7U

#ifdef __cplusplus
extern "C" {
#endif

extern const uint8_t lw_harbour_table[LW_harbour_TABLE_BYTES] LW_harbour_MEMORY;

/* One byte: frame below FRAME_COUNT, offset below FRAME_BYTES. */
static inline uint8_t lw_harbour_byte(size_t frame, size_t offset)
{
#if defined(__AVR__)
    return pgm_read_byte(&lw_harbour_table[frame * LW_harbour_FRAME_BYTES + offset]);
#else
    return lw_harbour_table[frame * LW_harbour_FRAME_BYTES + offset];
#endif
}

/* Copies a frame, below FRAME_COUNT, to a buffer of at least FRAME_BYTES bytes. */
static inline void lw_harbour_frame(size_t frame, uint8_t *to)
{
#if defined(__AVR__)
    memcpy_P(to, &lw_harbour_table[frame * LW_harbour_FRAME_BYTES], LW_harbour_FRAME_BYTES);
#else
    memcpy(to, &lw_harbour_table[frame * LW_harbour_FRAME_BYTES], LW_harbour_FRAME_BYTES);
#endif
}

#ifdef __cplusplus
}
#endif

#endif
