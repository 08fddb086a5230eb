#include "lampwright_react.h"

#if LAMPWRIGHT_CEILING
#include "lampwright_ceiling.h"
#endif
#include "lampwright_inputs.h"
#include "lampwright_situations.h"
#include "lampwright_target.h"

uint8_t lampwright_react_open(const uint8_t *data, lampwright_place size) {
  uint8_t status = lampwright_player_open(&lampwright_show_player, data, size,
                                          lampwright_show_bytes, LAMPWRIGHT_FRAME_BYTES);
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_situations_open(&lampwright_show_player);
  }
#if LAMPWRIGHT_CEILING
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_ceiling_open(&lampwright_show_player);
  }
#endif
  lampwright_show_start();
  return status;
}

void lampwright_react_read(void) { lampwright_inputs_read(&lampwright_show_player); }

void lampwright_react_frame(void) {
#if LAMPWRIGHT_CEILING
  uint16_t factor;
#endif
  LAMPWRIGHT_MARK(1);
  lampwright_react_read();
  (void)lampwright_situations_frame(&lampwright_show_player);
#if LAMPWRIGHT_CEILING
  factor = lampwright_ceiling(&lampwright_show_player);
  LAMPWRIGHT_MARK(2);
  lampwright_show_send_scaled(factor);
#else
  LAMPWRIGHT_MARK(2);
  lampwright_show_send();
#endif
}
