/*
 * A stand-in for a hobby IDE's core on the RP2040, which no Debian package has: what the examples call
 * of it, and the time from the controller's timer. It is started by the folder's own start code.
 */
#include <Arduino.h>

static volatile uint32_t *const TIMERAWL = (volatile uint32_t *)0x40054028;

unsigned long micros() { return *TIMERAWL; }

void pinMode(uint8_t, uint8_t) {}

int digitalRead(uint8_t) { return HIGH; }

int main() {
  setup();
  for (;;) {
    loop();
  }
}
