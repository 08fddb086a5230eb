/* The hook on any other controller: what the loop hands out is the frame table, at the right times. */
#include <stdio.h>
#include <stdlib.h>
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

static int sends(void (*call)(void), const uint8_t *expected) {
  filled = 0;
  call();
  return filled == LAMPWRIGHT_FRAME_BYTES && memcmp(sent, expected, sizeof sent) == 0;
}

static void expect(int holds, const char *what) {
  if (!holds) {
    printf("not so: %s\n", what);
    faults++;
  }
}

/* hook_test TABLE: the frames of the first scene, which loops, and of the second, which does not. */
int main(int count, char **arguments) {
  static uint8_t table[2 * LAMPWRIGHT_SCENE_walk_FRAMES][LAMPWRIGHT_FRAME_BYTES];
  static uint8_t all_dark[LAMPWRIGHT_FRAME_BYTES];
  const uint32_t frames = LAMPWRIGHT_SCENE_walk_FRAMES;
  const uint32_t start = 0xFFFF0000UL; /* wraps on the way */
  uint32_t frame;
  uint16_t i;
  FILE *file = count == 2 ? fopen(arguments[1], "rb") : NULL;
  if (file == NULL || fread(table, sizeof table, 1, file) != 1) {
    return 2;
  }
  (void)fclose(file);
  now = start;
  lampwright_show_begin();
  expect(lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_SCENE_walk) ==
             LAMPWRIGHT_OK,
         "the data opens");
  for (frame = 0; frame < 20000; frame++) {
    /* 59.94 frames a second: frame n is due at n / 59.94 s, and seen on the next tick of 64 us */
    uint32_t ideal = (uint32_t)(frame * 1000000000ULL / 59940);
    while (!lampwright_show_due(LAMPWRIGHT_RATE(59940UL))) {
      now += 16;
    }
    if (now - start + 64 < ideal || now - start > ideal + 128) {
      faults++;
    }
    if (!sends(lampwright_show_frame, table[frame % frames])) {
      faults++;
    }
  }
  expect(!lampwright_show_ended(), "a loop never ends");
  /* after a stop of a second the frames go on at their rate, not in a burst */
  now += 1000000;
  expect(lampwright_show_due(LAMPWRIGHT_RATE(59940UL)) == 1, "late frame");
  expect(lampwright_show_due(LAMPWRIGHT_RATE(59940UL)) == 0 ||
             lampwright_show_due(LAMPWRIGHT_RATE(59940UL)) == 0,
         "no burst");

  /* pause: the frame stays, and the next one follows afterwards */
  lampwright_show_pause(1);
  expect(sends(lampwright_show_frame, table[(frame - 1) % frames]), "paused");
  lampwright_show_pause(0);
  expect(sends(lampwright_show_frame, table[frame % frames]), "going on");

  /* brightness and dark scale what is sent and nothing else */
  lampwright_show_brightness(127);
  filled = 0;
  lampwright_show_send();
  for (i = 0; i < LAMPWRIGHT_FRAME_BYTES; i++) {
    expect(sent[i] == table[frame % frames][i] / 2, "half as bright");
  }
  lampwright_show_dark(1);
  expect(sends(lampwright_show_send, all_dark), "dark");
  lampwright_show_dark(0);
  lampwright_show_brightness(255);
  expect(sends(lampwright_show_send, table[frame % frames]), "as it was");

  /* a scene that plays once ends on its last frame and stays there */
  expect(lampwright_show_scene(99) == LAMPWRIGHT_ARGUMENT, "no such scene");
  expect(lampwright_show_scene(LAMPWRIGHT_SCENE_once) == LAMPWRIGHT_OK, "the second scene");
  for (frame = 0; frame < frames; frame++) {
    expect(!lampwright_show_ended(), "not yet ended");
    expect(sends(lampwright_show_frame, table[frames + frame]), "frame of the second scene");
  }
  expect(lampwright_show_ended() == 1, "ended");
  expect(sends(lampwright_show_frame, table[2 * frames - 1]), "the last frame stays");
  expect(lampwright_show_ended() == 1, "still ended");

  /* stop: dark at once and until a scene is started */
  expect(sends(lampwright_show_stop, all_dark), "stopped");
  expect(!lampwright_show_ended(), "stopped is not ended");
  expect(sends(lampwright_show_frame, all_dark), "still dark");
  expect(lampwright_show_scene(LAMPWRIGHT_SCENE_walk) == LAMPWRIGHT_OK, "the first again");
  expect(sends(lampwright_show_frame, table[0]), "from its first frame");

  /* lamps by name: one dark, its bytes where the header says */
  lampwright_player_lamp(&lampwright_show_player, LAMPWRIGHT_LAMP_top, LAMPWRIGHT_DARK, 0);
  filled = 0;
  lampwright_show_frame();
  for (i = 0; i < LAMPWRIGHT_LAMP_top_RUN0_COUNT * LAMPWRIGHT_LAMP_top_RUN0_PIXEL_BYTES; i++) {
    expect(lampwright_show_bytes[LAMPWRIGHT_LAMP_top_RUN0_OFFSET + i] == 0, "one lamp dark");
  }
  expect(lampwright_show_bytes[LAMPWRIGHT_LAMP_tail_OFFSET] ==
             table[1][LAMPWRIGHT_LAMP_tail_OFFSET],
         "another is not");
  printf("%d faults\n", faults);
  return faults != 0;
}
