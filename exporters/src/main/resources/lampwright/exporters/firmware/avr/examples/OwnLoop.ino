/*
 * Your own loop drives the scene, with room for your own work between the frames: here a switch
 * from @PIN@ to ground pauses the light.
 */
#include <lampwright_scenes.h>
#include <lampwright_show.h>

/* Pin names as in the datasheet: each IDE numbers the pins of a board in its own way. */
static void switch_begin() {
  DDR@PORT@ &= (uint8_t)~(1 << @BIT@);
  PORT@PORT@ |= 1 << @BIT@; /* pull-up */
}

static uint8_t switch_closed() { return (PIN@PORT@ & 1 << @BIT@) == 0; }

void setup() {
  switch_begin();
  lampwright_show_begin();
  lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
}

void loop() {
  /* your own work goes here; keep it shorter than a frame */
  lampwright_show_pause(switch_closed());

  if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_FIRST_MILLIHERTZ))) {
    lampwright_show_next();
    lampwright_show_send();
  }
}
