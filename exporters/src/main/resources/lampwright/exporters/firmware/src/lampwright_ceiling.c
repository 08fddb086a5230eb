#include "lampwright_ceiling.h"

#include <string.h>

#define FLAGS_AT 7
#define CEILING 8
#define LIMIT_BYTES 4
#define RUN_HEAD_BYTES 3
#define SIZE_BYTES 2
#define WHOLE 256
/* Of all weights: times 255 it is less than 2^32. */
#define MOST_SUM (0xFFFFFFFFUL / 255)

#define U8(at) LAMPWRIGHT_READ(at)

#if defined(__GNUC__)
#define NOINLINE __attribute__((noinline))
#else
#define NOINLINE
#endif

typedef const uint8_t *flash;

static uint16_t u16(flash at) { return (uint16_t)(U8(at) | (uint16_t)U8(at + 1) << 8); }

static uint16_t dark(lampwright_player *player) {
  (void)lampwright_player_dark(player);
  return WHOLE;
}

/* The sum of every period-th byte. */
static NOINLINE uint32_t lit(const uint8_t *bytes, uint16_t count, uint8_t period) {
  uint32_t sum = 0;
  for (;;) {
    sum += *bytes;
    if (count <= period) {
      return sum;
    }
    count = (uint16_t)(count - period);
    bytes += period;
  }
}

/*
 * The factor of the frame; WHOLE if a table is against the rules, which makes all dark. As it is
 * opened the limit is that of the weights, which a frame of ones adds up without exceeding 32 bits.
 */
static NOINLINE uint16_t factor(lampwright_player *player, uint8_t opening) {
  flash show = lampwright_player_show(player);
  flash end = lampwright_player_end(player);
  flash at;
  const uint8_t *byte = player->buffer;
  uint32_t sum = 0;
  uint32_t limit;
  uint16_t bytes;
  if (show == 0 || !(U8(player->data + FLAGS_AT) & CEILING)) {
    return WHOLE;
  }
  if (end - show < LIMIT_BYTES + SIZE_BYTES) {
    return dark(player);
  }
  bytes = u16(end - SIZE_BYTES);
  if (bytes < LIMIT_BYTES + SIZE_BYTES || bytes > (uint32_t)(end - show)) {
    return dark(player);
  }
  at = end - bytes;
  end -= SIZE_BYTES;
  limit = u16(at) | (uint32_t)u16(at + 2) << 16;
  at += LIMIT_BYTES;
  while (at < end) {
    uint16_t columns;
    uint8_t period;
    uint8_t i;
    if (end - at < RUN_HEAD_BYTES) {
      return dark(player);
    }
    columns = u16(at);
    period = U8(at + 2);
    at += RUN_HEAD_BYTES;
    if (columns == 0 || period == 0 || columns > (uint16_t)(player->end - byte) ||
        end - at < 2 * period) {
      return dark(player);
    }
    for (i = 0; i < period; i++) {
      if (i < columns) {
        sum += lit(byte + i, (uint16_t)(columns - i), period) * u16(at);
      }
      at += 2;
    }
    byte += columns;
  }
  if (byte != player->end) {
    return dark(player);
  }
  if (opening) {
    return sum > MOST_SUM ? dark(player) : WHOLE;
  }
  if (sum <= limit) {
    return WHOLE;
  }
  /* Rounded up in 256ths, so that the factor is the lower one; it is less than 256. */
  return (uint16_t)(limit / ((sum >> 8) + ((sum & 255) != 0)));
}

uint8_t lampwright_ceiling_open(lampwright_player *player) {
  uint8_t lamps = player->lamps;
  uint16_t bytes = (uint16_t)(player->end - player->buffer);
  memset(player->buffer, 1, bytes);
  (void)factor(player, 1);
  memset(player->buffer, 0, bytes);
  return player->lamps == lamps ? LAMPWRIGHT_OK : LAMPWRIGHT_FAULT;
}

uint16_t lampwright_ceiling(lampwright_player *player) { return factor(player, 0); }
