/* Plays the first scene without any IDE: `make` builds it with avr-gcc. */
#include <avr/interrupt.h>

#include "lampwright_live.h"
#include "lampwright_scenes.h"
#include "lampwright_show.h"

int main(void) {
  lampwright_show_begin();
  lampwright_live_begin();
  sei();
  lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
  for (;;) {
    if (lampwright_live()) {
      lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
    }
    if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_FIRST_MILLIHERTZ))) {
      lampwright_show_frame();
    }
  }
}
