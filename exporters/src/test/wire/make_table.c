/* Writes a frame table: make_table KIND FRAMES BYTES SEED >FILE. Kinds: noise, ramp, walk, edges.
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int main(int count, char **arguments) {
  if (count != 5) {
    return 2;
  }
  const char *kind = arguments[1];
  long frames = atol(arguments[2]);
  long bytes = atol(arguments[3]);
  uint32_t state = (uint32_t)atol(arguments[4]);
  for (long f = 0; f < frames; f++) {
    for (long b = 0; b < bytes; b++) {
      int value = 0;
      if (strcmp(kind, "noise") == 0) {
        state = state * 1664525u + 1013904223u; /* Numerical Recipes' constants, from memory */
        value = (int)(state >> 24);
      } else if (strcmp(kind, "ramp") == 0) {
        value = (int)((f * 5 + b * 3) & 255);
      } else if (strcmp(kind, "walk") == 0) {
        value = f % bytes == b ? 255 : 0;
      } else if (strcmp(kind, "edges") == 0) {
        static const uint8_t hard[] = {0x00, 0xFF, 0x01, 0x80, 0xFE, 0x7F, 0xAA, 0x55};
        value = hard[(f + b) % 8];
      } else {
        return 2;
      }
      putchar(value);
    }
  }
  return 0;
}
