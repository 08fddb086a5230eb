#include "lampwright_react.h"

#include "lampwright_inputs.h"
#include "lampwright_situations.h"
#include "lampwright_target.h"

uint8_t lampwright_react_open(const uint8_t *data, lampwright_place size) {
  uint8_t status = lampwright_player_open(&lampwright_show_player, data, size,
                                          lampwright_show_bytes, LAMPWRIGHT_FRAME_BYTES);
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_situations_open(&lampwright_show_player);
  }
  lampwright_show_start();
  return status;
}

void lampwright_react_read(void) { lampwright_inputs_read(&lampwright_show_player); }

void lampwright_react_frame(void) {
  LAMPWRIGHT_MARK(1);
  lampwright_react_read();
  (void)lampwright_situations_frame(&lampwright_show_player);
  LAMPWRIGHT_MARK(2);
  lampwright_show_send();
}
