#include "lampwright_player.h"

#include <string.h>

uint8_t lampwright_player_open(lampwright_player *player, const uint8_t *data,
                               lampwright_place size, uint8_t *buffer, uint16_t buffer_bytes) {
  memset(buffer, 0, buffer_bytes);
  player->data = data;
  player->buffer = buffer;
  player->frames = (uint16_t)(size / LAMPWRIGHT_FRAME_BYTES);
  return player->frames > 0 ? LAMPWRIGHT_OK : LAMPWRIGHT_SIZE;
}

uint8_t lampwright_player_scene(lampwright_player *player, uint8_t scene) {
  player->frame = 0;
  return scene == 0 ? LAMPWRIGHT_OK : LAMPWRIGHT_ARGUMENT;
}

uint8_t lampwright_player_frame(lampwright_player *player) {
  const uint8_t *from = player->data + (uint16_t)(player->frame * LAMPWRIGHT_FRAME_BYTES);
  uint16_t i;
  for (i = 0; i < LAMPWRIGHT_FRAME_BYTES; i++) {
    player->buffer[i] = LAMPWRIGHT_READ(from + i);
  }
  if (++player->frame == player->frames) {
    player->frame = 0;
  }
  return LAMPWRIGHT_OK;
}
