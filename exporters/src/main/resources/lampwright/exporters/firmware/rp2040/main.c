/* Plays the first scene without any IDE: `make` builds it with arm-none-eabi-gcc. */
#include "lampwright_live.h"
#include "lampwright_scenes.h"
#include "lampwright_show.h"

int main(void) {
  lampwright_show_begin();
  lampwright_live_begin();
  (void)lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
  for (;;) {
    if (lampwright_live()) {
      (void)lampwright_show_open(lampwright_packed, LAMPWRIGHT_PACKED_SIZE, LAMPWRIGHT_FIRST_SCENE);
    }
    if (lampwright_show_due(LAMPWRIGHT_RATE(LAMPWRIGHT_FIRST_MILLIHERTZ))) {
      lampwright_show_frame();
    }
    lampwright_show_wait();
  }
}
