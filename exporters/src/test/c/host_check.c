/* Plays packed data and compares with a frame table, in order, over the seam and by seeking.
 * usage: host_check DATA TABLE FRAMES [rounds of damage] */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "damage.h"
#include "lampwright_player.h"

static uint8_t *load(const char *name, size_t *size) {
  FILE *f = fopen(name, "rb");
  uint8_t *bytes;
  long length;
  if (!f) {
    exit(2);
  }
  fseek(f, 0, SEEK_END);
  length = ftell(f);
  rewind(f);
  bytes = malloc((size_t)length);
  *size = fread(bytes, 1, (size_t)length, f);
  fclose(f);
  return bytes;
}

int main(int argc, char **argv) {
  static lampwright_player player;
  size_t size, table_size, frame_bytes, frames, i;
  uint8_t *data, *table, *buffer;
  int rounds = argc > 4 ? atoi(argv[4]) : 0;
  int faults = 0, refused = 0, played = 0;
  data = load(argv[1], &size);
  table = load(argv[2], &table_size);
  frames = (size_t)atoi(argv[3]);
  frame_bytes = table_size / frames;
  buffer = malloc(frame_bytes);
  if (lampwright_player_open(&player, data, (lampwright_place)size, buffer, (uint16_t)frame_bytes) !=
          LAMPWRIGHT_OK ||
      lampwright_player_scene(&player, 0) != LAMPWRIGHT_OK) {
    printf("refused\n");
    return 1;
  }
  for (i = 0; i < frames + frames / 2 + 2; i++) {
    if (lampwright_player_frame(&player) != LAMPWRIGHT_OK ||
        memcmp(buffer, table + i % frames * frame_bytes, frame_bytes) != 0) {
      printf("frame %zu differs\n", i);
      return 1;
    }
  }
  for (i = 0; i < frames; i += 1 + frames / 97) {
    uint8_t lamp;
    size_t k;
    for (lamp = 0; lamp < player.lamps; lamp++) {
      if (lampwright_player_lamp(&player, lamp, 0, (uint32_t)i) != LAMPWRIGHT_OK) {
        return 1;
      }
    }
    for (k = i; k < i + 3; k++) {
      lampwright_player_frame(&player);
      if (memcmp(buffer, table + k % frames * frame_bytes, frame_bytes) != 0) {
        printf("frame %zu differs after seeking %zu\n", k, i);
        return 1;
      }
    }
  }
  for (; rounds > 0; rounds--) {
    /* A copy of exact size, so that the sanitizer sees every byte read past it. */
    size_t length = size;
    uint8_t *bad = malloc(size);
    uint32_t c;
    int hits = 1 + (int)(random32() % 8);
    memcpy(bad, data, size);
    while (hits--) {
      bad[6 + random32() % (size - 6)] = (uint8_t)random32();
    }
    bad[6] = data[6];
    if (random32() % 2) {
      bad[7] = data[7];
      bad[12] = (uint8_t)length;
      bad[13] = (uint8_t)(length >> 8);
      if (data[7] & 2) {
        bad[14] = (uint8_t)(length >> 16);
      }
    }
    c = crc(bad + 6, length - 6);
    for (i = 0; i < 4; i++) {
      bad[2 + i] = (uint8_t)(c >> (8 * i));
    }
    size_t n = frame_bytes;
    uint8_t *out = malloc(n);
    if (lampwright_player_open(&player, bad, (lampwright_place)length, out, (uint16_t)n) ==
        LAMPWRIGHT_OK) {
      uint8_t status = lampwright_player_scene(&player, 0);
      for (i = 0; i < 400 && status == LAMPWRIGHT_OK; i++) {
        if (i % 50 == 49 && player.lamps) {
          lampwright_player_lamp(&player, (uint8_t)(random32() % player.lamps), 0, random32() % 4000);
        }
        status = lampwright_player_frame(&player);
      }
      if (status == LAMPWRIGHT_FAULT) {
        faults++;
        for (i = 0; i < n; i++) {
          if (out[i]) {
            printf("not dark after a fault\n");
            return 1;
          }
        }
      } else {
        played++;
      }
    } else {
      refused++;
    }
    free(out);
    free(bad);
  }
  free(data);
  free(table);
  free(buffer);
  printf("same; damaged: %d refused, %d faults, %d played\n", refused, faults, played);
  return 0;
}
