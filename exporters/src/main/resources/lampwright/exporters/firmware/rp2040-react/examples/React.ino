/*
 * Plays the situations of the project: the lamps react to the receiver and the switches.
 */
#include <lampwright_inputs.h>
#include <lampwright_live.h>
#include <lampwright_react.h>
#include <lampwright_scenes.h>

void setup() {
  lampwright_show_begin();
  lampwright_react_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE);
  lampwright_inputs_begin();
  lampwright_live_begin();
  lampwright_show_start();
}

void loop() {
  if (lampwright_live()) {
    lampwright_react_read(); /* what was read meanwhile is old */
    lampwright_react_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE);
  }
  lampwright_react_read();
  if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_SHOW_MILLIHERTZ))) {
    lampwright_react_frame();
  }
}
