#ifndef LAMPWRIGHT_PINS_H
#define LAMPWRIGHT_PINS_H

/*
 * Names made of a port letter that stands in a macro: LAMPWRIGHT_JOIN(PORT, LETTER) with LETTER
 * defined as B is PORTB. The numbers let the preprocessor compare letters and know which ports the
 * controller has.
 */
#define LAMPWRIGHT_JOIN_AS_IS(left, right) left##right
#define LAMPWRIGHT_JOIN(left, right) LAMPWRIGHT_JOIN_AS_IS(left, right)

#define LAMPWRIGHT_PORT_NUMBER(letter) LAMPWRIGHT_JOIN(LAMPWRIGHT_PORT_NUMBER_, letter)
#define LAMPWRIGHT_PORT_NUMBER_A 1
#define LAMPWRIGHT_PORT_NUMBER_B 2
#define LAMPWRIGHT_PORT_NUMBER_C 3
#define LAMPWRIGHT_PORT_NUMBER_D 4
#define LAMPWRIGHT_PORT_NUMBER_E 5
#define LAMPWRIGHT_PORT_NUMBER_F 6

/* Bits of each port that come out of the package, by controller, without the reset pin; source: the
 * datasheets' pinouts. */
#if defined(__AVR_ATmega328P__)
#define LAMPWRIGHT_PORT_BITS_2 0xFF
#define LAMPWRIGHT_PORT_BITS_3 0x3F
#define LAMPWRIGHT_PORT_BITS_4 0xFF
#elif defined(__AVR_ATmega32U4__)
#define LAMPWRIGHT_PORT_BITS_2 0xFF
#define LAMPWRIGHT_PORT_BITS_3 0xC0
#define LAMPWRIGHT_PORT_BITS_4 0xFF
#define LAMPWRIGHT_PORT_BITS_5 0x44
#define LAMPWRIGHT_PORT_BITS_6 0xF3
#elif defined(__AVR_ATtiny85__)
#define LAMPWRIGHT_PORT_BITS_2 0x1F
#endif

/* 1 if the controller has that pin, else 0; works in #if, since an unknown name counts as 0 there.
 */
#define LAMPWRIGHT_HAS_PIN(letter, bit)                                                            \
  ((LAMPWRIGHT_PORT_BITS_OF(LAMPWRIGHT_PORT_NUMBER(letter)) >> (bit)) & 1)
#define LAMPWRIGHT_PORT_BITS_OF(number) LAMPWRIGHT_JOIN(LAMPWRIGHT_PORT_BITS_, number)

#endif
