/* Plays the situations of the project without any IDE: `make` builds it with avr-gcc. */
#include <avr/interrupt.h>

#include "lampwright_inputs.h"
#include "lampwright_live.h"
#include "lampwright_react.h"
#include "lampwright_scenes.h"

int main(void) {
  lampwright_show_begin();
  lampwright_inputs_begin();
  lampwright_live_begin();
  sei();
  lampwright_react_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE);
  for (;;) {
    if (lampwright_live()) {
      lampwright_react_read(); /* what was read meanwhile is old */
      lampwright_react_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE);
    }
    lampwright_react_read();
    if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_SHOW_MILLIHERTZ))) {
      lampwright_react_frame();
    }
  }
}
