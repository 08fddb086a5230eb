/* Plays the situations without any IDE: `make` builds it with arm-none-eabi-gcc. */
#include "lampwright_inputs.h"
#include "lampwright_live.h"
#include "lampwright_react.h"
#include "lampwright_scenes.h"

int main(void) {
  lampwright_show_begin();
  (void)lampwright_react_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE);
  lampwright_inputs_begin();
  lampwright_live_begin();
  lampwright_show_start(); /* that took a while */
  for (;;) {
    if (lampwright_live()) {
      lampwright_react_read(); /* what was read meanwhile is old */
      (void)lampwright_react_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE);
    }
    if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_SHOW_MILLIHERTZ))) {
      lampwright_react_frame();
    }
    lampwright_show_wait();
    lampwright_react_read();
  }
}
