/*
 * Your own loop drives the scene frame by frame, so that there is room for your own work between
 * the frames: here a switch from pin 2 to ground makes the light stand still.
 */
#include <lampwright_scenes.h>
#include <lampwright_show.h>

static const uint8_t SWITCH_PIN = 2;
static const unsigned long PERIOD_US = 1000000000UL / LAMPWRIGHT_FIRST_MILLIHERTZ;

static unsigned long last;

void setup() {
  pinMode(SWITCH_PIN, INPUT_PULLUP);
  lampwright_show_begin();
  lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
  last = micros();
}

void loop() {
  /* your own work goes here; keep it shorter than a frame */

  if (micros() - last >= PERIOD_US) {
    last += PERIOD_US;
    if (digitalRead(SWITCH_PIN) == HIGH) {
      lampwright_show_next();
    }
    lampwright_show_send();
  }
}
