#ifndef LAMPWRIGHT_PLAYER_H
#define LAMPWRIGHT_PLAYER_H

/* A stand-in for the packed-data player, with as much of its interface as the show needs: plays a
 * bare frame table as scene 0. */
#include <stdint.h>

#include "lampwright_config.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef uint16_t lampwright_place;

enum { LAMPWRIGHT_OK = 0, LAMPWRIGHT_SIZE = 3, LAMPWRIGHT_ARGUMENT = 7 };

typedef struct {
  const uint8_t *data;
  uint8_t *buffer;
  uint16_t frames;
  uint16_t frame;
} lampwright_player;

uint8_t lampwright_player_open(lampwright_player *player, const uint8_t *data,
                               lampwright_place size, uint8_t *buffer, uint16_t buffer_bytes);
uint8_t lampwright_player_scene(lampwright_player *player, uint8_t scene);
uint8_t lampwright_player_frame(lampwright_player *player);

#ifdef __cplusplus
}
#endif

#endif
