
/*
 * Each bit of a pixel is one byte on the SPI's data out, beginning high and ending low: the line's
 * high and low times are those bits. Clock, the byte for a 0 and the byte for a 1, worked out from
 * the pixels' limits; a clock that is 5 % off still keeps them.
 */
struct spi_bits {
  uint32_t hertz;
  uint8_t zero;
  uint8_t one;
};

static const spi_bits BITS[LAMPWRIGHT_CHAINS] = {
@BITS@
};

static uint8_t on_the_line[8 * LAMPWRIGHT_DIMMED_BYTES];

/* An SPI has one data pin, so this sends every chain there: choose another SPI for chain 1. */
void lampwright_emit_bytes(uint8_t chain, const uint8_t *bytes, uint16_t count) {
  const spi_bits &bits = BITS[chain];
  uint8_t *next = on_the_line;
  for (uint16_t i = 0; i < count; i++) {
    for (uint8_t bit = 0x80; bit != 0; bit >>= 1) {
      *next++ = bytes[i] & bit ? bits.one : bits.zero;
    }
  }
  delayMicroseconds(LAMPWRIGHT_RESET_US);
  SPI.beginTransaction(SPISettings(bits.hertz, MSBFIRST, SPI_MODE0));
  SPI.transfer(on_the_line, next - on_the_line);
  SPI.endTransaction();
}
