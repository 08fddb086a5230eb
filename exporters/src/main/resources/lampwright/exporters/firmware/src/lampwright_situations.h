/*
 * Situations: which lamps play which scenes, by what the inputs read. The tables are behind the
 * scenes in the packed data (docs/packed.md of Lampwright); the player plays the lamps.
 *
 *   lampwright_player_open(&player, data, size, buffer, buffer_bytes);
 *   lampwright_situations_open(&player);            all is dark until the first frame
 *   for each frame:
 *     lampwright_situations_input(&player, 0, 1520);   whatever was read since the last frame
 *     lampwright_situations_frame(&player);            the buffer holds the frame
 *
 * There is one show at a time. No function allocates, recurses or waits. Calls must not overlap:
 * don't call from an interrupt.
 */
#ifndef LAMPWRIGHT_SITUATIONS_H
#define LAMPWRIGHT_SITUATIONS_H

#include <stdint.h>

#include "lampwright_config.h"
#include "lampwright_player.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * What the player has room for, in lampwright_config.h: LAMPWRIGHT_INPUTS, LAMPWRIGHT_CENTRES
 * (inputs that learn their centre), LAMPWRIGHT_SITUATIONS, LAMPWRIGHT_SLOTS (counters),
 * LAMPWRIGHT_CONDITION_BYTES, and LAMPWRIGHT_TIME_BYTES: 1, 2 or 4 bytes of a counter.
 */

/*
 * Starts the situations of data that the player has opened: frame 0 is next, no input has been
 * read, no situation is active and all is dark. LAMPWRIGHT_NOT_PACKED if the data has none,
 * LAMPWRIGHT_LIMIT if there is more of something than there is room for; all stays dark.
 */
uint8_t lampwright_situations_open(lampwright_player *player);

/*
 * Takes a reading that ended before the next frame: the width of a servo pulse in microseconds,
 * where one of no servo is ignored, or the level of a switch's pin, 0 or 1.
 */
void lampwright_situations_input(const lampwright_player *player, uint8_t input, uint16_t reading);

/*
 * Works out the next frame, starts the scenes of lamps that another situation has now, and brings
 * the buffer to the frame. LAMPWRIGHT_FAULT if the data breaks the format's rules: all is dark then
 * until the next lampwright_player_open. A scene that goes on in its midst takes as long to start
 * as lampwright_player_lamp says.
 */
uint8_t lampwright_situations_frame(lampwright_player *player);

#ifdef __cplusplus
}
#endif

#endif
