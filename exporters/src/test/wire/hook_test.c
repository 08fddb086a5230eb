/* The hook on any other controller: what the loop hands out is the frame table, at the right times.
 */
#include <stdio.h>
#include <string.h>

#include "lampwright_scenes.h"
#include "lampwright_show.h"
#include "lampwright_wire_hook.h"

static uint32_t now;
static uint8_t sent[LAMPWRIGHT_FRAME_BYTES];
static uint16_t filled;
static int faults;

void lampwright_emit_bytes(uint8_t chain, const uint8_t *bytes, uint16_t count) {
  faults += chain == 0 ? filled != 0 : filled == 0;
  memcpy(sent + filled, bytes, count);
  filled = (uint16_t)(filled + count);
}

void lampwright_emit_outputs(const uint8_t *duties, uint16_t count) {
  memcpy(sent + filled, duties, count);
  filled = (uint16_t)(filled + count);
}

uint32_t lampwright_microseconds(void) { return now; }

int main(void) {
  uint32_t frame;
  uint32_t frames = LAMPWRIGHT_PACKED_SIZE / LAMPWRIGHT_FRAME_BYTES;
  uint32_t start = 0xFFFF0000UL; /* wraps on the way */
  now = start;
  lampwright_show_begin();
  faults += LAMPWRIGHT_OK !=
            lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
  for (frame = 0; frame < 200000; frame++) {
    /* 59.94 frames a second: frame n is due at n / 59.94 s, and seen on the next tick of 64 us */
    uint32_t ideal = (uint32_t)(frame * 1000000000ULL / 59940);
    while (!lampwright_show_due(LAMPWRIGHT_RATE(59940UL))) {
      now += 16;
    }
    if (now - start + 64 < ideal || now - start > ideal + 128) {
      faults++;
    }
    filled = 0;
    lampwright_show_frame();
    if (filled != LAMPWRIGHT_FRAME_BYTES ||
        memcmp(sent, lampwright_packed + frame % frames * LAMPWRIGHT_FRAME_BYTES,
               LAMPWRIGHT_FRAME_BYTES) != 0) {
      faults++;
    }
  }
  /* after a stop of a second the frames go on at their rate, not in a burst */
  now += 1000000;
  faults += lampwright_show_due(LAMPWRIGHT_RATE(59940UL)) != 1;
  faults += lampwright_show_due(LAMPWRIGHT_RATE(59940UL)) != 0 &&
            lampwright_show_due(LAMPWRIGHT_RATE(59940UL)) != 0;
  printf("%lu frames, %d faults\n", (unsigned long)frame, faults);
  return faults != 0;
}
