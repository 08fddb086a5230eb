#include "lampwright_show.h"

#include "lampwright_outputs.h"
#include "lampwright_target.h"
#include "lampwright_wire.h"

uint8_t lampwright_show_bytes[LAMPWRIGHT_FRAME_BYTES];

lampwright_player lampwright_show_player;

static uint16_t due;     /* when, in ticks of the frame clock, the next frame is due */
static uint16_t carried; /* parts of a tick that no frame has been given yet */

void lampwright_show_begin(void) {
  lampwright_wire_begin();
#if LAMPWRIGHT_OUTPUTS > 0
  lampwright_outputs_begin();
#endif
  lampwright_clock_begin();
}

uint8_t lampwright_show_open(const uint8_t *data, lampwright_place size, uint8_t scene) {
  uint8_t status = lampwright_player_open(&lampwright_show_player, data, size,
                                          lampwright_show_bytes, LAMPWRIGHT_FRAME_BYTES);
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_player_scene(&lampwright_show_player, scene);
  }
  due = lampwright_clock_now(); /* checking the data took time that is not the scene's */
  return status;
}

void lampwright_show_next(void) {
  LAMPWRIGHT_MARK(1);
  (void)lampwright_player_frame(&lampwright_show_player);
  LAMPWRIGHT_MARK(2);
}

void lampwright_show_send(void) {
#if LAMPWRIGHT_CHAINS > 0
  lampwright_wire_send(lampwright_show_bytes);
#endif
#if LAMPWRIGHT_OUTPUTS > 0
  lampwright_outputs_set(lampwright_show_bytes + (LAMPWRIGHT_FRAME_BYTES - LAMPWRIGHT_OUTPUTS));
#endif
  LAMPWRIGHT_MARK(3);
}

void lampwright_show_frame(void) {
  lampwright_show_next();
  lampwright_show_send();
}

uint8_t lampwright_show_due(uint16_t ticks, uint16_t part, uint16_t missing) {
  uint16_t now = lampwright_clock_now();
  /* A period has at most 15,625 ticks, so what is due lies less than half of the range away. */
  if ((uint16_t)(now - due) >= 0x8000) {
    return 0;
  }
  if (carried >= missing) {
    carried -= missing;
    ticks++;
  } else {
    carried += part;
  }
  due += ticks;
  if ((uint16_t)(now - due) < 0x8000) {
    due = now;
  }
  return 1;
}
