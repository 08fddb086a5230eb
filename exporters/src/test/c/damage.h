/* What the checks of damaged data share: chance that is the same in every run, and the checksum. */
#ifndef DAMAGE_H
#define DAMAGE_H

#include <stddef.h>
#include <stdint.h>

/* Not all that include this use all of it. */
#if defined(__GNUC__)
#define SHARED static __attribute__((unused))
#else
#define SHARED static
#endif

SHARED uint32_t seed = 20261125;
SHARED uint32_t random32(void) {
  seed ^= seed << 13;
  seed ^= seed >> 17;
  seed ^= seed << 5;
  return seed;
}

SHARED uint32_t crc(const uint8_t *p, size_t n) {
  uint32_t c = 0xFFFFFFFFu;
  while (n--) {
    int i;
    c ^= *p++;
    for (i = 0; i < 8; i++) {
      c = c & 1 ? c >> 1 ^ 0xEDB88320u : c >> 1;
    }
  }
  return ~c;
}

#endif
