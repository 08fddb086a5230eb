#ifndef LAMPWRIGHT_SHOW_H
#define LAMPWRIGHT_SHOW_H

#include <stdint.h>

#include "lampwright_clock.h"
#include "lampwright_config.h"
#include "lampwright_player.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Plays scenes: takes frames from the player to the chains and driver outputs.
 *
 *   lampwright_show_begin();
 *   lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_SCENE_working);
 *   for (;;) {
 *     if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_SCENE_working_MILLIHERTZ))) {
 *       lampwright_show_frame();
 *     }
 *   }
 *
 * None of these functions may be called from an interrupt routine.
 */

/*
 * The frame: every chain's bytes in the order in which they are sent, then a duty byte for each
 * driver output. lampwright_scenes.h says where each lamp's bytes are. The player changes only what
 * differs from the last frame, so read it, but do not change it.
 */
extern uint8_t lampwright_show_bytes[LAMPWRIGHT_FRAME_BYTES];

/*
 * The player, for the functions of lampwright_player.h that have no counterpart here: pass it to
 * them to start and stop single lamps, which lampwright_scenes.h numbers.
 */
extern lampwright_player lampwright_show_player;

/* Makes the pins ready, all dark, and starts the timers. Call once. */
void lampwright_show_begin(void);

/*
 * Opens packed data (in program memory on AVR) and starts a scene on every lamp; its first frame is
 * due at once. Returns LAMPWRIGHT_OK, or why the player can't play it, and all stays dark.
 */
uint8_t lampwright_show_open(const uint8_t *data, lampwright_place size, uint8_t scene);

/*
 * Starts another scene on every lamp, and ends a pause; its first frame is due at once. Returns
 * LAMPWRIGHT_OK, or LAMPWRIGHT_ARGUMENT if there is no such scene.
 */
uint8_t lampwright_show_scene(uint8_t scene);

/* Makes a frame due at once, and the others in step with it. lampwright_show_scene does it too. */
void lampwright_show_start(void);

/* 1: pauses; 0: resumes. */
void lampwright_show_pause(uint8_t on);

/* Makes every lamp dark at once, until a scene is started. */
void lampwright_show_stop(void);

/*
 * Returns 1 once the frame is the last of a scene that plays once and was started for every lamp,
 * else 0. A looping scene never ends.
 */
uint8_t lampwright_show_ended(void);

#if LAMPWRIGHT_DIMMING
/*
 * Master brightness from the next frame on: 255 as exported, 128 half the current, 0 dark. What is
 * sent is scaled in a copy of one chain; lampwright_show_bytes stays as it is.
 */
void lampwright_show_brightness(uint8_t level);

/* 1: blanks all lamps while the scenes run; 0: shows them again. */
void lampwright_show_dark(uint8_t on);
#endif

/* Puts the next frame into lampwright_show_bytes, unless it is paused. */
void lampwright_show_next(void);

/* Sends lampwright_show_bytes to the chains and driver outputs. */
void lampwright_show_send(void);

#if LAMPWRIGHT_CEILING
/* The same with every byte scaled by 256ths, 0 to 256, beside brightness: lampwright_react.h. */
void lampwright_show_send_scaled(uint16_t factor);
#endif

#if LAMPWRIGHT_LIVE
/* The same where the lines have been low for LAMPWRIGHT_RESET_US already: lampwright_live.h. */
void lampwright_show_send_rested(void);
#endif

/* lampwright_show_next and lampwright_show_send, one after the other: the whole of a frame. */
void lampwright_show_frame(void);

/*
 * Returns 1 once in each frame period, else 0, and never waits. The first call returns 1. A call
 * that comes late does not delay the frames after it, unless it is late by a whole period. A frame
 * comes up to a tick of the frame clock late (lampwright_clock.h), but never early.
 * The three numbers are made by LAMPWRIGHT_RATE: a period is `ticks` + `part`/(`part` + `missing`)
 * ticks of the frame clock, and the parts are carried from frame to frame, so that nothing is lost.
 */
uint8_t lampwright_show_due(lampwright_ticks ticks, uint16_t part, uint16_t missing);

#if LAMPWRIGHT_CLOCK_WAITS
/* Sleeps until the next frame is due, or an input has something to read. */
void lampwright_show_wait(void);
#endif

/*
 * The three arguments of lampwright_show_due for a rate in thousandths of a hertz, from 1,000 to
 * 1,000,000. Exact below 65.536 Hz and for every whole number of hertz; otherwise a frame is short
 * by less than a 65,535th of a tick.
 */
#define LAMPWRIGHT_RATE(millihertz)                                                                \
  (lampwright_ticks)(LAMPWRIGHT_TICK_MILLIHERTZ / (millihertz)), LAMPWRIGHT_RATE_PART(millihertz), \
      (uint16_t)(LAMPWRIGHT_RATE_WHOLE(millihertz) - LAMPWRIGHT_RATE_PART(millihertz))
#define LAMPWRIGHT_RATE_REST(millihertz) (LAMPWRIGHT_TICK_MILLIHERTZ % (millihertz))
#define LAMPWRIGHT_RATE_PART(millihertz)                                                           \
  (uint16_t)(1ULL * LAMPWRIGHT_RATE_REST(millihertz) * LAMPWRIGHT_RATE_WHOLE(millihertz) /         \
             (millihertz))
#define LAMPWRIGHT_RATE_WHOLE(millihertz)                                                          \
  ((millihertz) < 65536                                                   ? (millihertz)           \
   : (millihertz) % 20 == 0 && LAMPWRIGHT_RATE_REST(millihertz) % 20 == 0 ? (millihertz) / 20      \
                                                                          : 65535)

#ifdef __cplusplus
}
#endif

#endif
