/*
 * The ceiling of situations: where a frame would draw more than the supply's limit, it is scaled as
 * it is sent. The table ends the packed data (docs/packed.md of Lampwright).
 */
#ifndef LAMPWRIGHT_CEILING_H
#define LAMPWRIGHT_CEILING_H

#include <stdint.h>

#include "lampwright_player.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Looks at the whole table; once the player and its situations are open, and all is dark.
 * LAMPWRIGHT_FAULT if it breaks the format's rules, or if a frame could add up to 2^32 or more: all
 * is dark then until the next lampwright_player_open.
 */
uint8_t lampwright_ceiling_open(lampwright_player *player);

/*
 * By how much the frame in the player's buffer has to be scaled, in 256ths: 256 if it is not over
 * the limit, or if the data has no ceiling or is dark, else 0 to 255. A byte b is then sent as b *
 * factor / 256, rounded down; the buffer has to stay as it is. Only for data that
 * lampwright_ceiling_open has not refused.
 */
uint16_t lampwright_ceiling(lampwright_player *player);

#ifdef __cplusplus
}
#endif

#endif
