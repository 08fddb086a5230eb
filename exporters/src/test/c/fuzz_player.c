/*
 * Plays whatever bytes come, with the checksum and the sizes made right, and looks whether the
 * player keeps its contract: no byte outside the data is read and none outside the frame is written
 * (which the sanitizers see, as both are blocks of their exact size), and all is dark after a fault
 * and stays so. Entry of libFuzzer; fuzz_replay.c calls it where there is none.
 *
 * An input is 4 bytes of what to do, then packed data: bit 0 of the first moves the tables to where
 * the data's end wants them, bits 1 to 4 choose the scene, bits 5 to 7 how many frames are
 * played first (0 to 127); the second chooses a lamp, the others the frame that it is started at.
 *
 * Data with a show is played by its situations instead, for as many frames. The second byte is the
 * number of bytes at the end of the input that are readings, two each, which come round: bits 0 to
 * 2 of the first are the input, bits 3 and 4 how many frames pass before the reading after it, bits
 * 5 and 6 what the second is: a width near the middle, a level, any width at all, or any input at
 * all.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "damage.h"
#include "lampwright_ceiling.h"
#include "lampwright_player.h"
#include "lampwright_situations.h"

#define DOES 4
#define LEAST 27
#define MOST 70000

#define FLAGS_AT 7
#define WIDE_COLUMNS 1
#define WIDE_PLACES 2
#define SHOW 4
#define KNOWN_FLAGS 15

int LLVMFuzzerTestOneInput(const uint8_t *input, size_t size);

static void put(uint8_t *at, uint32_t value, unsigned bytes) {
  while (bytes--) {
    *at++ = (uint8_t)value;
    value >>= 8;
  }
}

static uint32_t number(const uint8_t *at, unsigned bytes) {
  uint32_t value = 0;
  while (bytes--) {
    value = value << 8 | at[bytes];
  }
  return value;
}

/*
 * Makes the header fit the data, and then the checksum. Where the tables of a show end isn't known,
 * so they are moved by as much as the data is longer than it says.
 */
static void mend(uint8_t *data, size_t size, int tables_too) {
  unsigned place = data[FLAGS_AT] & WIDE_PLACES ? 3 : 2;
  unsigned column = data[FLAGS_AT] & WIDE_COLUMNS ? 2 : 1;
  size_t tables = data[10] * (column + place) + data[11] * (6u + data[10] * place);
  uint32_t longer = (uint32_t)size - number(data + 12, place);
  data[0] = 'L';
  data[1] = 'W';
  data[6] = 2;
  data[FLAGS_AT] &= KNOWN_FLAGS;
  put(data + 12, (uint32_t)size, place);
  if (tables_too && data[FLAGS_AT] & SHOW) {
    put(data + 12 + place, number(data + 12 + place, place) + longer, place);
  } else if (tables_too && tables < size) {
    put(data + 12 + place, (uint32_t)(size - tables), place);
  }
  put(data + 2, crc(data + 6, size - 6), 4);
}

static void want(int holds, const char *what) {
  if (!holds) {
    fprintf(stderr, "%s\n", what);
    abort();
  }
}

static void want_dark(lampwright_player *player, const uint8_t *buffer, size_t bytes) {
  int again;
  for (again = 0; again < 2; again++) {
    size_t i;
    for (i = 0; i < bytes; i++) {
      want(buffer[i] == 0, "not dark after a fault");
    }
    want(lampwright_player_frame(player) == LAMPWRIGHT_OK, "a fault again");
    want(lampwright_player_scene(player, 0) == LAMPWRIGHT_ARGUMENT, "plays on after a fault");
    want(lampwright_situations_frame(player) != LAMPWRIGHT_OK, "situations go on after a fault");
    want(lampwright_ceiling(player) == 256, "a ceiling after a fault");
  }
}

/* Plays until a fault; gives what the last call gave. */
static uint8_t play(lampwright_player *player, const uint8_t *does) {
  lampwright_scene about;
  uint8_t scene = does[0] >> 1 & 15;
  uint32_t start = does[2] | (uint32_t)does[3] << 8;
  unsigned frames = (1u << (does[0] >> 5)) - 1;
  uint8_t status = lampwright_player_scene(player, scene);
  if (status != LAMPWRIGHT_OK) {
    return status;
  }
  want(lampwright_player_describe(player, scene, &about) == LAMPWRIGHT_OK, "no scene to describe");
  while (frames-- != 0 && status == LAMPWRIGHT_OK) {
    status = lampwright_player_frame(player);
  }
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_player_lamp(player, does[1], scene, start);
    want(does[1] < player->lamps || status != LAMPWRIGHT_OK, "a lamp too many");
    want(start < about.frames || status != LAMPWRIGHT_OK, "a frame too many");
  }
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_player_lamp(player, 0, scene, about.frames - 1);
  }
  frames = 5;
  while (frames-- != 0 && status == LAMPWRIGHT_OK) {
    status = lampwright_player_frame(player);
  }
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_player_lamp(player, does[1] % player->lamps, LAMPWRIGHT_DARK, 0);
  }
  return status;
}

/* Takes a reading; gives how many frames pass before the one after it. */
static unsigned take(const lampwright_player *player, const uint8_t *reading) {
  uint8_t value = reading[1];
  uint8_t input = reading[0] & 7;
  switch (reading[0] >> 5 & 3) {
  case 0:
    lampwright_situations_input(player, input, (uint16_t)(1245 + 2 * value));
    break;
  case 1:
    lampwright_situations_input(player, input, value & 1);
    break;
  case 2:
    lampwright_situations_input(player, input, (uint16_t)(257 * value));
    break;
  default:
    lampwright_situations_input(player, value, 1500);
  }
  return reading[0] >> 3 & 3;
}

/* Plays by the situations until a fault; gives what the last call gave. */
static uint8_t play_show(lampwright_player *player, unsigned frames, const uint8_t *readings,
                         size_t count) {
  size_t next = 0;
  unsigned wait = 0;
  uint8_t status = lampwright_situations_open(player);
  if (status == LAMPWRIGHT_OK) {
    status = lampwright_ceiling_open(player);
  }
  while (frames-- != 0 && status == LAMPWRIGHT_OK) {
    size_t taken;
    for (taken = 0; taken < count && wait == 0; taken++) {
      wait = take(player, readings + 2 * next);
      next = (next + 1) % count;
    }
    wait -= wait != 0;
    status = lampwright_situations_frame(player);
    want(lampwright_ceiling(player) <= 256, "a factor above 256");
    want((status == LAMPWRIGHT_OK) == (lampwright_player_show(player) != 0),
         "another status than the player's");
  }
  return status;
}

int LLVMFuzzerTestOneInput(const uint8_t *input, size_t size) {
  static lampwright_player player;
  uint8_t *data;
  uint8_t *buffer;
  uint16_t frame;
  uint8_t status;
  size_t readings = 0;
  if (size < DOES + LEAST || size > DOES + MOST) {
    return 0;
  }
  size -= DOES;
  if (input[DOES + FLAGS_AT] & SHOW) {
    readings = input[1] < size - LEAST ? input[1] : size - LEAST;
    size -= readings;
  }
  data = malloc(size);
  memcpy(data, input + DOES, size);
  mend(data, size, input[0] & 1);
  frame = (uint16_t)(data[8] | data[9] << 8);
  buffer = malloc(frame + 1u);
  buffer[frame] = 0x5A;
  status = lampwright_player_open(&player, data, (lampwright_place)size, buffer, frame);
  want(status <= LAMPWRIGHT_FAULT, "unknown status");
  if (status == LAMPWRIGHT_OK && data[FLAGS_AT] & SHOW) {
    status = play_show(&player, (1u << (input[0] >> 5)) - 1, input + DOES + size, readings / 2);
    want(status == LAMPWRIGHT_OK || status == LAMPWRIGHT_FAULT || status == LAMPWRIGHT_LIMIT,
         "a status that situations can't give");
  } else if (status == LAMPWRIGHT_OK) {
    status = play(&player, input);
    want(status == LAMPWRIGHT_OK || status == LAMPWRIGHT_FAULT || status == LAMPWRIGHT_ARGUMENT,
         "a status that play can't give");
  }
  if (status != LAMPWRIGHT_OK && status != LAMPWRIGHT_ARGUMENT) {
    want_dark(&player, buffer, frame);
  }
  want(buffer[frame] == 0x5A, "wrote past the frame");
  free(buffer);
  free(data);
  return 0;
}
