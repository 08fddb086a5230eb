/*
 * Plays the first scene by itself, in a loop.
 */
#include <lampwright_live.h>
#include <lampwright_scenes.h>
#include <lampwright_show.h>

void setup() {
  lampwright_show_begin();
  lampwright_live_begin();
  lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
}

void loop() {
  if (lampwright_live()) {
    lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
  }
  if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_FIRST_MILLIHERTZ))) {
    lampwright_show_frame();
  }
}
