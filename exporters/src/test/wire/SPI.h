/* An SPI that keeps what it is given to send. */
#ifndef SPI_H
#define SPI_H

#include <stddef.h>
#include <stdint.h>

#define MSBFIRST 1
#define SPI_MODE0 0

struct SPISettings {
  uint32_t hertz;
  SPISettings(uint32_t clock, int, int) : hertz(clock) {}
};

struct SPIClass {
  void begin() {}
  void beginTransaction(SPISettings settings);
  void transfer(void *bytes, size_t count);
  void endTransaction() {}
};

extern SPIClass SPI;
extern SPIClass SPI1;

#endif
