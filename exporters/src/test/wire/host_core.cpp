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
#if !defined(F_CPU)
#define F_CPU 125000000UL
#endif

static int switched = HIGH;
static double ns;
SPIClass SPI;
SPIClass SPI1;

unsigned long micros() { return now += 50; }
void pinMode(uint8_t, uint8_t) {}
int digitalRead(uint8_t) { return switched; }
void delayMicroseconds(unsigned int us) { printf("reset %u\n", us); }
void analogWrite(uint8_t pin, int value) { printf("pwm %u %d\n", pin, value); }

/* A routine that sends bytes: they are written down. */
void send_pixels(uint8_t pin, const uint8_t *bytes, uint16_t count) {
  printf("bytes %u", pin);
  for (uint16_t i = 0; i < count; i++) {
    printf(" %u", bytes[i]);
  }
  printf("\n");
}

/* A pin and a counter of cycles; asking for it takes three of them. */
static uint32_t cycles;
static uint32_t changed;
static bool first;

static double since_change() {
  double lasted = (cycles - changed) * 1e9 / F_CPU;
  changed = cycles;
  return lasted;
}

uint32_t count_cycles() { return cycles += 3; }
void noInterrupts() {
  first = true;
  printf("line");
}
void interrupts() {
  printf(" %.1f\n", since_change());
}

static bool before_begin = true;

void set_pin(uint8_t, uint8_t) {
  double lasted = since_change();
  if (!first && !before_begin) {
    printf(" %.1f", lasted);
  }
  before_begin = before_begin && !first;
  first = false;
}
/* The next clock below that the board has; without a source any. */
void SPIClass::beginTransaction(SPISettings settings) {
#if defined(SPI_SOURCE)
  uint32_t divider = 1;
  while (SPI_SOURCE / divider > settings.hertz) {
    divider = SPI_SOURCE == 48000000 ? divider * 2 : divider + 1;
  }
  ns = 1e9 * divider / SPI_SOURCE;
#else
  ns = 1e9 / settings.hertz;
#endif
}

void SPIClass::transfer(void *bytes, size_t count) {
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
