/*
 * Plays packed data by its situations. Reads cases from standard input, all
 * numbers little endian:
 *
 *   bytes of data (4) | data | bytes of a frame (2) | frames (4) | rounds of
 * damage (2) | frames x { readings (2) | readings x { input (1) | reading (2) }
 * }
 *
 * and writes for each case and frame the status (1) and the frame as it is sent. The rounds
 * change bytes of the show, put the checksum right, and play that with readings
 * by chance.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "damage.h"
#include "lampwright_ceiling.h"
#include "lampwright_situations.h"

static uint32_t number(int bytes) {
  uint32_t n = 0;
  int i;
  for (i = 0; i < bytes; i++) {
    int c = getchar();
    if (c == EOF) {
      if (i == 0 && bytes == 4) {
        exit(0);
      }
      exit(2);
    }
    n |= (uint32_t)c << (8 * i);
  }
  return n;
}

static void take(uint8_t *to, size_t n) {
  if (fread(to, 1, n, stdin) != n) {
    exit(2);
  }
}

static int is_dark(const uint8_t *buffer, size_t n) {
  while (n--) {
    if (*buffer++) {
      return 0;
    }
  }
  return 1;
}

/* Faults, refused and played are counted for the caller's sake alone: any of
 * them is fine. */
static void damaged(const uint8_t *data, size_t size, size_t show,
                    size_t frame_bytes) {
  static lampwright_player player;
  uint8_t *bad = malloc(size);
  uint8_t *out = malloc(frame_bytes);
  uint32_t c;
  size_t length = size;
  int i, hits = 1 + (int)(random32() % 4);
  memcpy(bad, data, size);
  while (hits--) {
    uint8_t *at = bad + show + random32() % (size - show);
    *at = random32() % 2 ? (uint8_t)random32()
                         : (uint8_t)(*at ^ 1u << random32() % 8);
  }
  if (random32() % 8 == 0) {
    length = show + 1 + random32() % (size - show);
    bad[12] = (uint8_t)length;
    bad[13] = (uint8_t)(length >> 8);
    if (data[7] & 2) {
      bad[14] = (uint8_t)(length >> 16);
    }
    bad = realloc(bad, length);
  }
  c = crc(bad + 6, length - 6);
  for (i = 0; i < 4; i++) {
    bad[2 + i] = (uint8_t)(c >> (8 * i));
  }
  if (lampwright_player_open(&player, bad, (lampwright_place)length, out,
                             (uint16_t)frame_bytes) == LAMPWRIGHT_OK) {
    uint8_t status = lampwright_situations_open(&player);
    if (status == LAMPWRIGHT_OK) {
      status = lampwright_ceiling_open(&player);
    }
    if (status != LAMPWRIGHT_OK &&
        lampwright_situations_frame(&player) == LAMPWRIGHT_OK) {
      exit(3);
    }
    for (i = 0; i < 60 && status == LAMPWRIGHT_OK; i++) {
      int k;
      for (k = 0; k < 4; k++) {
        uint16_t reading = random32() % 4 ? (uint16_t)(1300 + random32() % 400)
                                          : random32() % 2;
        lampwright_situations_input(&player, (uint8_t)(random32() % 6),
                                    reading);
      }
      status = lampwright_situations_frame(&player);
      if (lampwright_ceiling(&player) > 256) {
        exit(6);
      }
      if (lampwright_player_show(&player) == 0 && !is_dark(out, frame_bytes)) {
        exit(7);
      }
    }
    if (status != LAMPWRIGHT_OK && !is_dark(out, frame_bytes)) {
      exit(4);
    }
  } else if (!is_dark(out, frame_bytes)) {
    exit(5);
  }
  free(out);
  free(bad);
}

int main(void) {
  for (;;) {
    static lampwright_player player;
    size_t size = number(4);
    uint8_t *data = malloc(size);
    uint8_t *buffer;
    uint8_t status;
    size_t frame_bytes;
    uint32_t frames, i, rounds, show = 0;
    uint16_t factor;
    size_t b;
    take(data, size);
    frame_bytes = number(2);
    frames = number(4);
    rounds = number(2);
    buffer = malloc(frame_bytes);
    status = lampwright_player_open(&player, data, (lampwright_place)size,
                                    buffer, (uint16_t)frame_bytes);
    if (status == LAMPWRIGHT_OK) {
      const uint8_t *at = lampwright_player_show(&player);
      show = at ? (uint32_t)(at - data) : 0;
      status = lampwright_situations_open(&player);
    }
    if (status == LAMPWRIGHT_OK) {
      status = lampwright_ceiling_open(&player);
    }
    for (i = 0; i < frames; i++) {
      uint32_t readings = number(2);
      for (; readings != 0; readings--) {
        uint8_t input = (uint8_t)number(1);
        uint16_t reading = (uint16_t)number(2);
        lampwright_situations_input(&player, input, reading);
      }
      if (status == LAMPWRIGHT_OK) {
        status = lampwright_situations_frame(&player);
      }
      factor = lampwright_ceiling(&player);
      putchar(status);
      for (b = 0; b < frame_bytes; b++) {
        putchar((uint8_t)(buffer[b] * factor >> 8));
      }
    }
    for (i = 0; i < rounds && show != 0; i++) {
      damaged(data, size, show, frame_bytes);
    }
    free(buffer);
    free(data);
  }
}
