#ifndef LAMPWRIGHT_OUTPUTS_H
#define LAMPWRIGHT_OUTPUTS_H

#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The driver outputs: one duty byte each, 0 fully off, 255 fully on, without a spike at either end.
 */

/* Starts them with every output off. Call once. */
void lampwright_outputs_begin(void);

/* Sets all outputs from LAMPWRIGHT_OUTPUTS duty bytes. */
void lampwright_outputs_set(const uint8_t *duties);

#ifdef __cplusplus
}
#endif

#endif
