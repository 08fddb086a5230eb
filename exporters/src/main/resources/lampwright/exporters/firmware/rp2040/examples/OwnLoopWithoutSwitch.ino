/*
 * Your own loop drives the scene, with room for your own work between the frames. The project uses
 * every pin of the controller, so no switch is read here.
 */
#include <lampwright_scenes.h>
#include <lampwright_show.h>

void setup() {
  lampwright_show_begin();
  lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
}

void loop() {
  /* your own work goes here; keep it shorter than a frame */

  if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_FIRST_MILLIHERTZ))) {
    lampwright_show_next();
    lampwright_show_send();
  }
}
