/*
 * Runs an example of a controller without a driver on this machine, and writes what it sends: for
 * each frame the runs of high and low on the data line in ns, read from the SPI's bytes, and the
 * duties of its PWM pins.
 */
#include <Arduino.h>
#include <SPI.h>
#include <stdio.h>
#include <stdlib.h>

static unsigned long now;
static int switched = HIGH;
static double ns;
SpiStandIn SPI;

unsigned long micros() { return now += 50; }
void pinMode(uint8_t, uint8_t) {}
int digitalRead(uint8_t) { return switched; }
void delayMicroseconds(unsigned int us) { printf("reset %u\n", us); }
void analogWrite(uint8_t pin, int value) { printf("pwm %u %d\n", pin, value); }
void SpiStandIn::beginTransaction(SPISettings settings) { ns = 1e9 / settings.hertz; }

void SpiStandIn::transfer(void *bytes, size_t count) {
  const uint8_t *next = (const uint8_t *)bytes;
  printf("line");
  int level = 1;
  int length = 0;
  for (size_t i = 0; i < 8 * count; i++) {
    int bit = next[i / 8] >> (7 - i % 8) & 1;
    if (bit == level) {
      length++;
    } else {
      printf(" %.1f", length * ns);
      level = bit;
      length = 1;
    }
  }
  printf(" %.1f\n", length * ns);
}

/* host_core MICROSECONDS [closed] */
int main(int count, char **arguments) {
  unsigned long until = strtoul(arguments[1], NULL, 10);
  if (count > 2) {
    switched = LOW;
  }
  setup();
  while (now < until) {
    loop();
  }
  return 0;
}
