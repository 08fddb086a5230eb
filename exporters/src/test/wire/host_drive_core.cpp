/*
 * Runs the example that reacts, of a controller without a driver, on this machine: a drive is on the
 * pins, and what is sent is written down, a line for each chain and for each output.
 */
#include <Arduino.h>
#include <stdio.h>
#include <stdlib.h>

/* How long a turn of the loop takes, us. */
static const long TURN = 10;

static long now;
static long jump; /* the clock of a board has any value when it starts */
static uint8_t levels[256];
static void (*routines[256])();

unsigned long micros() { return (uint32_t)(now + jump); }
void pinMode(uint8_t, uint8_t) {}
int digitalRead(uint8_t pin) { return levels[pin]; }
void delayMicroseconds(unsigned int) {}
void noInterrupts() {}
void interrupts() {}
void attachInterrupt(int number, void (*routine)(), int) { routines[number] = routine; }
void analogWrite(uint8_t, int value) { printf("%d\n", value); }

void send_pixels(uint8_t, const uint8_t *bytes, uint16_t count) {
  for (uint16_t i = 0; i < count; i++) {
    printf("%u\n", bytes[i]);
  }
}

/* host_drive_core EDGES MICROSECONDS: lines of "us pin level", counted from the end of setup. */
int main(int, char **arguments) {
  FILE *edges = fopen(arguments[1], "r");
  long until = atol(arguments[2]);
  long at;
  int pin;
  int level;
  bool more = fscanf(edges, "%ld %d %d", &at, &pin, &level) == 3;
  jump = 0xFFFF0000L;
  for (bool begun = false; now < until; now += TURN) {
    long turn = now;
    for (; more && at <= turn; more = fscanf(edges, "%ld %d %d", &at, &pin, &level) == 3) {
      bool changes = levels[pin] != level;
      levels[pin] = (uint8_t)level;
      if (begun && changes && routines[pin]) {
        now = at;
        routines[pin]();
      }
    }
    now = turn;
    if (!begun) {
      begun = true;
      setup();
    }
    loop();
  }
  return 0;
}
