/*
 * A stand-in for the header of a core whose constants in flash must be read by functions: each byte of
 * the data is there with some bits the other way round, so that a plain read gives nonsense.
 */
#ifndef PGMSPACE_H
#define PGMSPACE_H

#include <stdint.h>

#define PROGMEM __attribute__((section(".progmem")))

static inline uint8_t pgm_read_byte(const void *address) {
  return (uint8_t)(*(const uint8_t *)address ^ 0xA5);
}

#endif
