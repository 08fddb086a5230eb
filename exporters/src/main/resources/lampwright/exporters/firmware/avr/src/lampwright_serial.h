#ifndef LAMPWRIGHT_SERIAL_H
#define LAMPWRIGHT_SERIAL_H

/*
 * The serial line of the bench link, 8 data bits, no parity, 1 stop bit: the controller's own
 * receiver is looked at, without an interrupt routine. It keeps two bytes and receives a third
 * meanwhile.
 */

#include <stdint.h>

#include <avr/io.h>

#include "lampwright_config.h"

#if defined(UDR0)
#define SERIAL_STATUS UCSR0A
#define SERIAL_DATA UDR0
#define SERIAL_CONTROL UCSR0B
#define SERIAL_FORM UCSR0C
#define SERIAL_DIVIDER UBRR0
#define SERIAL_PULL_UP (PORTD |= 1 << 0)
#else
#define SERIAL_STATUS UCSR1A
#define SERIAL_DATA UDR1
#define SERIAL_CONTROL UCSR1B
#define SERIAL_FORM UCSR1C
#define SERIAL_DIVIDER UBRR1
#define SERIAL_PULL_UP (PORTD |= 1 << 2)
#endif

/* Bits of the registers, the same for both. */
#define SERIAL_RECEIVED (1 << 7)
#define SERIAL_EMPTY (1 << 5)
#define SERIAL_DAMAGED (1 << 4 | 1 << 3) /* frame error, or a byte before it was lost */
#define SERIAL_DOUBLE_SPEED (1 << 1)
#define SERIAL_ENABLE (1 << 4 | 1 << 3)
#define SERIAL_8_BITS (1 << 2 | 1 << 1)

/*
 * At double speed a bit takes 8 cycles times this. The datasheet recommends that sender and
 * receiver differ by no more than 1.5 % then, and gives 3.9 % as the limit (ATmega328P, table of
 * the receiver's baud rate error at double speed, 8 bits; from memory). 115,200 baud at 16 MHz
 * is 2.1 % fast, which leaves 1.8 % to the sender: an adapter with a crystal is off by a hundredth
 * of that. What is off by more than 2.5 % is refused.
 */
#define SERIAL_STEPS ((F_CPU + 4UL * LAMPWRIGHT_LIVE_BAUD) / (8UL * LAMPWRIGHT_LIVE_BAUD))
#define SERIAL_CYCLES (8UL * SERIAL_STEPS * LAMPWRIGHT_LIVE_BAUD)
#define SERIAL_OFF (F_CPU > SERIAL_CYCLES ? F_CPU - SERIAL_CYCLES : SERIAL_CYCLES - F_CPU)
#if SERIAL_STEPS < 1 || 40 * SERIAL_OFF > SERIAL_CYCLES
#error "at this clock the baud rate would be off by more than 2.5 %: choose another, such as 500000"
#endif

static inline void lampwright_serial_begin(void) {
  SERIAL_PULL_UP; /* nothing is received from a line that is not connected */
  SERIAL_DIVIDER = SERIAL_STEPS - 1;
  SERIAL_STATUS = SERIAL_DOUBLE_SPEED;
  SERIAL_FORM = SERIAL_8_BITS;
  SERIAL_CONTROL = SERIAL_ENABLE;
}

/* Whether a byte is there. */
static inline uint8_t lampwright_serial_ready(void) { return SERIAL_STATUS & SERIAL_RECEIVED; }

/* Takes it; 0 if it is damaged, or one before it was lost. */
static inline uint8_t lampwright_serial_read(uint8_t *byte) {
  uint8_t status = SERIAL_STATUS; /* goes with the byte, so it is read first */
  *byte = SERIAL_DATA;
  return (status & SERIAL_DAMAGED) == 0;
}

/* Whether a byte can be sent. */
static inline uint8_t lampwright_serial_room(void) { return SERIAL_STATUS & SERIAL_EMPTY; }

static inline void lampwright_serial_write(uint8_t byte) { SERIAL_DATA = byte; }

#endif
