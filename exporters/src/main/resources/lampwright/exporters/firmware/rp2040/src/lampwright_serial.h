#ifndef LAMPWRIGHT_SERIAL_H
#define LAMPWRIGHT_SERIAL_H

/*
 * The serial line of the bench link, 8 data bits, no parity, 1 stop bit: one of the controller's
 * own, without an interrupt routine. It keeps 32 bytes.
 */

#include <stdint.h>

#include "lampwright_config.h"
#include "lampwright_rp2040_registers.h"

#define SERIAL_HERTZ 125000000UL

/* In 64ths, rounded: sixteen periods of the divided clock are a bit. */
#define SERIAL_DIVIDER ((4UL * SERIAL_HERTZ + LAMPWRIGHT_LIVE_BAUD / 2) / LAMPWRIGHT_LIVE_BAUD)
#if LAMPWRIGHT_LIVE_BAUD > 7000000
#error "the bench link takes up to 7,000,000 baud"
#endif

static inline void lampwright_serial_begin(void) {
  uint32_t used = RESET_UART(LAMPWRIGHT_LIVE_UART) | RESET_IO_BANK0 | RESET_PADS_BANK0;
  REGISTER(CLK_PERI_CTRL) = CLK_PERI_FROM_SYS;
  REGISTER(CLK_PERI_CTRL) = CLK_PERI_FROM_SYS | CLK_PERI_ENABLE;
  CLEAR_BITS(RESETS_RESET) = used;
  while ((REGISTER(RESETS_RESET_DONE) & used) != used) {
  }
  REGISTER(UART_CR(LAMPWRIGHT_LIVE_UART)) = 0;
  REGISTER(UART_IBRD(LAMPWRIGHT_LIVE_UART)) = SERIAL_DIVIDER / 64;
  REGISTER(UART_FBRD(LAMPWRIGHT_LIVE_UART)) = SERIAL_DIVIDER % 64;
  /* Written last of the three: that takes the dividers. */
  REGISTER(UART_LCR_H(LAMPWRIGHT_LIVE_UART)) = UART_8_BITS | UART_FIFOS;
  REGISTER(UART_CR(LAMPWRIGHT_LIVE_UART)) = UART_ENABLE | UART_TX_ENABLE | UART_RX_ENABLE;
  /* Nothing is received from a line that is not connected. */
  REGISTER(PADS_BANK0_PAD(LAMPWRIGHT_LIVE_RX_PIN)) =
      PAD_INPUT | PAD_NO_OUTPUT | PAD_PULL_UP | PAD_SCHMITT;
  REGISTER(PADS_BANK0_PAD(LAMPWRIGHT_LIVE_TX_PIN)) = PAD_4_MILLIAMPS | PAD_PULL_UP;
  REGISTER(IO_BANK0_CTRL(LAMPWRIGHT_LIVE_RX_PIN)) = FUNCTION_UART;
  REGISTER(IO_BANK0_CTRL(LAMPWRIGHT_LIVE_TX_PIN)) = FUNCTION_UART;
}

/* Whether a byte is there. */
static inline uint8_t lampwright_serial_ready(void) {
  return (REGISTER(UART_FR(LAMPWRIGHT_LIVE_UART)) & UART_RX_EMPTY) == 0;
}

/* Takes it; 0 if it is damaged, or bytes were lost. */
static inline uint8_t lampwright_serial_read(uint8_t *byte) {
  uint32_t data = REGISTER(UART_DR(LAMPWRIGHT_LIVE_UART));
  *byte = (uint8_t)data;
  return (data & UART_DAMAGED) == 0;
}

/* Whether a byte can be sent. */
static inline uint8_t lampwright_serial_room(void) {
  return (REGISTER(UART_FR(LAMPWRIGHT_LIVE_UART)) & UART_TX_FULL) == 0;
}

static inline void lampwright_serial_write(uint8_t byte) {
  REGISTER(UART_DR(LAMPWRIGHT_LIVE_UART)) = byte;
}

#endif
