/*
 * Gives fuzz_player.c the files named, then each of them so many times with other damage; the same
 * in every run. For compilers without libFuzzer. usage: fuzz_replay ROUNDS FILE...
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "damage.h"

#define MOST 70000

int LLVMFuzzerTestOneInput(const uint8_t *input, size_t size);

static const uint8_t telling[] = {0,    1,    2,    3,    0x10, 0x1F, 0x20, 0x3F, 0x7F, 0x80, 0x81,
                                  0xBF, 0xC0, 0xDF, 0xE0, 0xE1, 0xE2, 0xE3, 0xFE, 0xFF, 12,   16};

/* Changes some bytes: to any value, to a telling one, or by moving what comes after. */
static size_t damage(uint8_t *bytes, size_t size) {
  unsigned hits = 1 + random32() % 5;
  while (hits-- != 0) {
    size_t at = random32() % size;
    switch (random32() % 8) {
    case 0:
    case 1:
    case 2:
      bytes[at] = (uint8_t)random32();
      break;
    case 3:
    case 4:
      bytes[at] = telling[random32() % sizeof telling];
      break;
    case 5:
      bytes[at] ^= (uint8_t)(1 << random32() % 8);
      break;
    case 6:
      if (size > 40) {
        memmove(bytes + at, bytes + at + 1, size - at - 1);
        size--;
      }
      break;
    default:
      memmove(bytes + at + 1, bytes + at, size - at);
      bytes[at] = (uint8_t)random32();
      size++;
    }
  }
  return size;
}

int main(int argc, char **argv) {
  static uint8_t good[MOST];
  static uint8_t bad[MOST + 8];
  int rounds = argc > 1 ? atoi(argv[1]) : 0;
  long runs = 0;
  int i;
  for (i = 2; i < argc; i++) {
    FILE *f = fopen(argv[i], "rb");
    size_t size;
    int round;
    if (!f) {
      return 2;
    }
    size = fread(good, 1, sizeof good, f);
    fclose(f);
    if (size == 0) {
      continue;
    }
    for (round = 0; round <= rounds; round++) {
      size_t length = size;
      memcpy(bad, good, size);
      if (round != 0) {
        length = damage(bad, size);
      }
      if (getenv("FUZZ_KEEP")) { /* where to leave the input that a check ends on */
        FILE *keep = fopen(getenv("FUZZ_KEEP"), "wb");
        fwrite(bad, 1, length, keep);
        fclose(keep);
      }
      LLVMFuzzerTestOneInput(bad, length);
      runs++;
    }
  }
  printf("%ld inputs\n", runs);
  return 0;
}
