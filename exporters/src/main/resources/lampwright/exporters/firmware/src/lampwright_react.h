#ifndef LAMPWRIGHT_REACT_H
#define LAMPWRIGHT_REACT_H

#include <stdint.h>

#include "lampwright_show.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Plays the situations of the project, in place of lampwright_show_scene and lampwright_show_frame:
 *
 *   lampwright_show_begin();
 *   lampwright_inputs_begin();
 *   sei();
 *   lampwright_react_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE);
 *   for (;;) {
 *     lampwright_react_read();
 *     if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_SHOW_MILLIHERTZ))) {
 *       lampwright_react_frame();
 *     }
 *   }
 */

/*
 * Opens packed data; all is dark until a situation lights lamps. Returns LAMPWRIGHT_OK, or why it
 * can't be played, and all stays dark.
 */
uint8_t lampwright_react_open(const uint8_t *data, lampwright_place size);

/* Reads the inputs. Call as often as can be. */
void lampwright_react_read(void);

/* Works out the next frame and sends it. */
void lampwright_react_frame(void);

#ifdef __cplusplus
}
#endif

#endif
