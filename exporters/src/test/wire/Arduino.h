/* As much of a hobby IDE's core as the examples use, for controllers whose core Debian does not have. */
#ifndef ARDUINO_H
#define ARDUINO_H

#include <stdint.h>

#if defined(__AVR__)
#include <avr/interrupt.h>
#include <avr/io.h>
#endif

#define INPUT 0
#define INPUT_PULLUP 2
#define CHANGE 1
#define digitalPinToInterrupt(pin) (pin)
#define OUTPUT 1
#define LOW 0
#define HIGH 1

#ifdef __cplusplus
extern "C" {
#endif

unsigned long micros(void);

#ifdef __cplusplus
}

void pinMode(uint8_t pin, uint8_t mode);
int digitalRead(uint8_t pin);
void analogWrite(uint8_t pin, int value);
void delayMicroseconds(unsigned int us);
void noInterrupts();
void attachInterrupt(int number, void (*routine)(), int mode);
void interrupts();
void setup();
void loop();
#endif

#endif
