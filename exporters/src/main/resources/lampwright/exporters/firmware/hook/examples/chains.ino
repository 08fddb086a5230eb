
#if LAMPWRIGHT_DRIVER == BY_SPI

#include <SPI.h>

/*
 * Each bit of a pixel is some bits on the SPI's data out, beginning high and ending low: the line's
 * high and low times are those bits. Clock, bits for a bit, and what a 0 and a 1 are, worked out from
 * the pixels' limits; a clock that is 5 % off still keeps them.
 */
struct spi_bits {
  uint32_t hertz;
  uint8_t bits; /* 4 or 8 */
  uint8_t zero;
  uint8_t one;
};

static const spi_bits BITS[LAMPWRIGHT_CHAINS] = {
@BITS@
};

/*
 * The SPI of each chain. An SPI has one data pin, so a chain needs one of its own: write &SPI1 or what
 * your board has behind the first. A chain without one is not sent, and its pixels stay dark.
 */
static SPIClass *const SPI_OF_CHAIN[LAMPWRIGHT_CHAINS] = {&SPI};

static uint8_t on_the_line[8 * LAMPWRIGHT_DIMMED_BYTES];

void driver_begin() {
  for (uint8_t chain = 0; chain < LAMPWRIGHT_CHAINS; chain++) {
    if (SPI_OF_CHAIN[chain] != 0) {
      SPI_OF_CHAIN[chain]->begin();
    }
  }
}

void lampwright_emit_bytes(uint8_t chain, const uint8_t *bytes, uint16_t count) {
  const spi_bits &bits = BITS[chain];
  SPIClass *spi = SPI_OF_CHAIN[chain];
  if (spi == 0) {
    return;
  }
  uint8_t *next = on_the_line;
  for (uint16_t i = 0; i < count; i++) {
    uint8_t waiting = 0;
    for (uint8_t bit = 0x80; bit != 0; bit >>= 1) {
      waiting = (uint8_t)(waiting << 4 | (bytes[i] & bit ? bits.one : bits.zero));
      if (bits.bits == 8 || bit & 0x55) {
        *next++ = waiting;
        waiting = 0;
      }
    }
  }
  delayMicroseconds(LAMPWRIGHT_RESET_US);
  spi->beginTransaction(SPISettings(bits.hertz, MSBFIRST, SPI_MODE0));
  spi->transfer(on_the_line, next - on_the_line);
  spi->endTransaction();
}

#elif LAMPWRIGHT_DRIVER == BY_ROUTINE

/* The pins of the chains: set yours. */
static const uint8_t CHAIN_PINS[LAMPWRIGHT_CHAINS] = {@PINS@};

/*
 * Your routine: sends bytes as they are, in the pixels' own order, each most significant bit first. Most
 * have a buffer of their own; then copy the bytes there instead, and call what shows them. Take one
 * whose times are those of lampwright_config.h.
 */
extern void send_pixels(uint8_t pin, const uint8_t *bytes, uint16_t count);

void driver_begin() {
  for (uint8_t chain = 0; chain < LAMPWRIGHT_CHAINS; chain++) {
    pinMode(CHAIN_PINS[chain], OUTPUT);
  }
}

void lampwright_emit_bytes(uint8_t chain, const uint8_t *bytes, uint16_t count) {
  delayMicroseconds(LAMPWRIGHT_RESET_US);
  send_pixels(CHAIN_PINS[chain], bytes, count);
}

#else

/* The pins of the chains: set yours. */
static const uint8_t CHAIN_PINS[LAMPWRIGHT_CHAINS] = {@PINS@};

/* High times of a 0 and of a 1 and the length of a bit, ns, in the middle of the pixels' limits. */
struct pin_bits {
  uint16_t zero_ns;
  uint16_t one_ns;
  uint16_t bit_ns;
};

static const pin_bits TIMES[LAMPWRIGHT_CHAINS] = {
@TIMES@
};

/*
 * For cores of 100 MHz and more. Two functions of your board: the count of the core's cycles (on many
 * boards a register), and what sets a pin (a port register; digitalWrite is too slow on most).
 */
extern uint32_t count_cycles(void);
extern void set_pin(uint8_t pin, uint8_t high);
static const uint32_t CYCLES_A_MICROSECOND = F_CPU / 1000000UL;

static void wait_until(uint32_t start, uint32_t ns) {
  uint32_t cycles = ns * CYCLES_A_MICROSECOND / 1000;
  while (count_cycles() - start < cycles) {
  }
}

void driver_begin() {
  for (uint8_t chain = 0; chain < LAMPWRIGHT_CHAINS; chain++) {
    pinMode(CHAIN_PINS[chain], OUTPUT);
    set_pin(CHAIN_PINS[chain], LOW);
  }
}

/* Interrupts wait meanwhile: 1.25 us for each bit. */
void lampwright_emit_bytes(uint8_t chain, const uint8_t *bytes, uint16_t count) {
  const pin_bits &times = TIMES[chain];
  uint8_t pin = CHAIN_PINS[chain];
  delayMicroseconds(LAMPWRIGHT_RESET_US);
  noInterrupts();
  for (uint16_t i = 0; i < count; i++) {
    for (uint8_t bit = 0x80; bit != 0; bit >>= 1) {
      uint32_t start = count_cycles();
      set_pin(pin, HIGH);
      wait_until(start, bytes[i] & bit ? times.one_ns : times.zero_ns);
      set_pin(pin, LOW);
      wait_until(start, times.bit_ns);
    }
  }
  interrupts();
}

#endif
