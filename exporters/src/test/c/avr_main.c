/* Runs the player on a simulated AVR; marks in GPIOR0 tell the simulator what to count. */
#include <avr/io.h>
#include <stdint.h>

#include "lampwright_player.h"

extern const uint8_t packed_data[];
extern const uint16_t packed_size;
extern const uint16_t packed_frames;

static lampwright_player player;
static uint8_t buffer[FRAME_BYTES];

#define MARK_START 1
#define MARK_FRAME 2
#define MARK_ERROR 3
#define MARK_END 4

int main(void) {
  uint16_t frames = packed_frames;
#ifdef SEEK_STEP
  uint32_t seek = 0;
  frames /= SEEK_STEP;
#endif
  GPIOR1 = (uint8_t)((uintptr_t)buffer & 255);
  GPIOR2 = (uint8_t)((uintptr_t)buffer >> 8);
  if (lampwright_player_open(&player, packed_data, packed_size, buffer, sizeof buffer) != LAMPWRIGHT_OK ||
      lampwright_player_scene(&player, 0) != LAMPWRIGHT_OK) {
    GPIOR0 = MARK_ERROR;
  }
  while (frames-- != 0) {
    uint8_t status;
#ifdef SEEK_STEP
    uint8_t lamp;
    for (lamp = 0; lamp < player.lamps; lamp++) {
      if (lampwright_player_lamp(&player, lamp, 0, seek) != LAMPWRIGHT_OK) {
        GPIOR0 = MARK_ERROR;
      }
    }
    seek += SEEK_STEP;
#endif
    GPIOR0 = MARK_START;
    status = lampwright_player_frame(&player);
    GPIOR0 = MARK_FRAME;
    if (status != LAMPWRIGHT_OK) {
      GPIOR0 = MARK_ERROR;
    }
  }
  GPIOR0 = MARK_END;
  for (;;) {
  }
}
