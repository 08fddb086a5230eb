#ifndef LAMPWRIGHT_LIVE_H
#define LAMPWRIGHT_LIVE_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The bench link: the lamps follow the editor over a serial line, and play the show of this folder
 * when nobody sends. Only with LAMPWRIGHT_LIVE 1 (lampwright_config.h, or make LIVE=1); otherwise
 * these two are no code at all. README.md has the wiring, docs/live.md of Lampwright the protocol.
 *
 *   lampwright_show_begin();
 *   lampwright_live_begin();
 *   lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
 *   for (;;) {
 *     if (lampwright_live()) {
 *       lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
 *     }
 *     ...
 *   }
 */
#if LAMPWRIGHT_LIVE

/* Starts the serial line. Call once, after lampwright_show_begin. */
void lampwright_live_begin(void);

/*
 * Call between frames. Returns 0 at once if nothing was received. Else it listens for up to
 * 200 ms, and if a computer asks, shows the frames that it sends, until none has come for a second:
 * then it returns 1, and lampwright_show_bytes hold a frame of the computer's, so
 * the show has to be opened anew. With LAMPWRIGHT_LIVE_THEN_DARK 1 it makes all dark instead and
 * listens on.
 */
uint8_t lampwright_live(void);

#else
#define lampwright_live_begin() ((void)0)
#define lampwright_live() 0
#endif

#ifdef __cplusplus
}
#endif

#endif
