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
 * By how much the frame in the player's buffer has to be scaled, in 256ths: 256 if it is not over
 * the limit or the data has no ceiling, else 0 to 255. A byte b is then sent as b * factor / 256,
 * rounded down; the buffer has to stay as it is. Data that breaks the format's rules makes all dark
 * until the next lampwright_player_open.
 */
uint16_t lampwright_ceiling(lampwright_player *player);

#ifdef __cplusplus
}
#endif

#endif
