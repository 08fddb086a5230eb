/*
 * Lampwright player: plays packed light, frame by frame, into your buffer.
 *
 * The buffer holds one frame: the bytes of every chain in wire order, then one byte of each driver
 * output. The player changes only the bytes that change, so the buffer has to keep its contents
 * from one call to the next; send it to the lamps, but don't write to it.
 *
 * No function allocates, recurses, or keeps anything outside the player and the buffer. Calls for
 * one player must not overlap: don't call from an interrupt while the main program is in a call.
 *
 * Data that is not whole, not of this version or too large is refused by lampwright_player_open.
 * Data whose checksum is right but whose contents break the format's rules is detected in play:
 * LAMPWRIGHT_FAULT is returned. Either way the whole buffer is cleared and stays dark until the
 * next lampwright_player_open, and no byte outside the buffer is written.
 */
#ifndef LAMPWRIGHT_PLAYER_H
#define LAMPWRIGHT_PLAYER_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Whether lampwright_player_avr.S plays, not the C code. */
#if defined(__AVR__) && !LAMPWRIGHT_PORTABLE
#define LAMPWRIGHT_BY_ASSEMBLER 1
#else
#define LAMPWRIGHT_BY_ASSEMBLER 0
#endif

#if LAMPWRIGHT_LONG_DATA
typedef uint32_t lampwright_place;
#else
typedef uint16_t lampwright_place;
#endif

/* What a call may return. */
enum {
  LAMPWRIGHT_OK = 0,
  LAMPWRIGHT_NOT_PACKED = 1, /* no packed light at this address */
  LAMPWRIGHT_VERSION = 2,    /* of a format version that this player doesn't know */
  LAMPWRIGHT_SIZE = 3,       /* shorter or longer than it says */
  LAMPWRIGHT_CHECKSUM = 4,   /* damaged */
  LAMPWRIGHT_LIMIT = 5,      /* too many lamps, too large a frame or too long for this player */
  LAMPWRIGHT_FAULT = 6,      /* whole, but against the format's rules; all is dark */
  LAMPWRIGHT_ARGUMENT = 7    /* no such lamp, scene or frame */
};

/* Where one lamp is in its program. Private; lampwright_player_avr.S knows both orders. */
typedef struct {
  const uint8_t *entry; /* entry being played, or the one before the first; 0 rests */
  union {
    const uint8_t *place; /* next byte of the section */
    uint16_t phase;       /* of a wave section */
  } at;
  uint8_t left; /* frames left of the instruction */
#if LAMPWRIGHT_BY_ASSEMBLER
  uint8_t round[2]; /* what round and held are below, in 16 bits */
#else
  uint8_t held;   /* bits left of the byte before place, then a 1; 0 while holding */
  uint16_t round; /* frames left of the entry after those of the instruction */
#endif
} lampwright_voice;

/* One player. Private. */
typedef struct {
  const uint8_t *tables;
  uint8_t *buffer;
  uint8_t *end; /* of the frame in the buffer */
  const uint8_t *data;
  uint8_t lamps;
#if LAMPWRIGHT_LONG_DATA || LAMPWRIGHT_COLUMN_BYTES == 0
  uint8_t flags;
#endif
  lampwright_voice voices[LAMPWRIGHT_MAX_LAMPS];
} lampwright_player;

/* The number of a scene in which a lamp is dark. */
#define LAMPWRIGHT_DARK 255

/* A scene. */
typedef struct {
  uint32_t frames;
  uint32_t period_us; /* time from frame to frame */
  uint8_t loops;      /* 1: loops; 0: plays once, and stays on the last frame */
} lampwright_scene;

/*
 * Checks packed data in program memory, clears the frame buffer, which may be larger than needed
 * and has to outlive the player, and gets ready to play. Takes about 1 ms per 140 bytes of data
 * on an 8-bit controller at 16 MHz.
 */
uint8_t lampwright_player_open(lampwright_player *player, const uint8_t *data,
                               lampwright_place size, uint8_t *buffer, uint16_t buffer_bytes);

/* Describes a scene. */
uint8_t lampwright_player_describe(const lampwright_player *player, uint8_t scene,
                                   lampwright_scene *description);

/* Starts a scene on every lamp; shown from the next frame on. */
uint8_t lampwright_player_scene(lampwright_player *player, uint8_t scene);

/*
 * Starts a scene on one lamp, such that the next frame shows the given frame of the scene, or makes
 * the lamp dark if the scene is LAMPWRIGHT_DARK. From frame 0 it takes less than one frame of that
 * lamp; else it steps over the program's entries, twice at most, and then takes as long as at most
 * 4,096 frames of the lamp. A frame that the scene doesn't have is LAMPWRIGHT_ARGUMENT.
 */
uint8_t lampwright_player_lamp(lampwright_player *player, uint8_t lamp, uint8_t scene,
                               uint32_t frame);

/* The tables of situations in program memory, for lampwright_situations.c; 0 if there are none. */
const uint8_t *lampwright_player_show(const lampwright_player *player);

/* Makes all dark until the next lampwright_player_open, and returns LAMPWRIGHT_FAULT. */
uint8_t lampwright_player_dark(lampwright_player *player);

/* The end of the data. */
const uint8_t *lampwright_player_end(const lampwright_player *player);

/* Brings the buffer to the next frame. */
uint8_t lampwright_player_frame(lampwright_player *player);

#ifdef __cplusplus
}
#endif

#endif
