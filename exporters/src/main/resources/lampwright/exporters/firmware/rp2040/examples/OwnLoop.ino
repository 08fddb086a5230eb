/*
 * Your own loop drives the scene, with room for your own work between the frames: here a switch
 * from a pin to ground pauses the light.
 */
#include <lampwright_scenes.h>
#include <lampwright_show.h>

static const uint8_t SWITCH_PIN = @PIN@; /* one that nothing else uses */

void setup() {
  pinMode(SWITCH_PIN, INPUT_PULLUP);
  lampwright_show_begin();
  lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
}

void loop() {
  /* your own work goes here; keep it shorter than a frame */
  lampwright_show_pause(digitalRead(SWITCH_PIN) == LOW);

  if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_FIRST_MILLIHERTZ))) {
    lampwright_show_next();
    lampwright_show_send();
  }
}
