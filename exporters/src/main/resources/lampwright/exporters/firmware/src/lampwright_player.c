/*
 * Lampwright player. The format is told in docs-packed.md, the contract in lampwright_player.h.
 *
 * Nothing in the data is trusted. The tables stand at its end and are longer than any header that
 * is read in one go, so one look whether a place lies before the tables is enough for all of a
 * header. A column is compared with the frame before each write.
 */
#include "lampwright_player.h"

#include <string.h>

#if LAMPWRIGHT_MAX_LAMPS < 1 || LAMPWRIGHT_MAX_LAMPS > 255
#error "lampwright_config.h: LAMPWRIGHT_MAX_LAMPS needs 1 to 255"
#endif

/* Header. */
#define MAGIC ('L' | 'W' << 8)
#define CRC_AT 2
#define CHECKED_FROM 6
#define VERSION_AT 6
#define VERSION 1
#define FLAGS_AT 7
#define WIDE_COLUMNS 1
#define WIDE_PLACES 2
#define SIZE_AT 8
#define FRAME_BYTES_AT 11
#define CHAINS_AT 13
#define LAMPS_AT 14
#define SCENES_AT 15
#define TABLES_AT 16

/* Section kinds. */
#define RAW 1
#define WAVE 2
#define PLAIN 3 /* both bits of RAW and WAVE */
#define FLAGGED 4

/* Instructions. */
#define PATCH 0x80
#define FILL 0xC0
#define ROWS 0xE0
#define AGAIN 0xE1

/* Rules. */
#define STEP 0x10
#define SCALED 0x20
#define WIDTH_MASK 15

#define EMPTY 128

#if defined(__GNUC__)
#define NOINLINE __attribute__((noinline))
#else
#define NOINLINE
#endif

#define U8(at) LAMPWRIGHT_READ(at)

typedef const uint8_t *flash;
typedef lampwright_player player;
typedef lampwright_voice voice;
typedef lampwright_place place;

#if LAMPWRIGHT_LONG_DATA
#define PLACE_BYTES(p) (((p)->flags & WIDE_PLACES) ? 3 : 2)
#else
#define PLACE_BYTES(p) 2
#endif
#define ENTRY_BYTES(p) (uint8_t)(2 + PLACE_BYTES(p))
#define LAMP_BYTES(p) (uint8_t)(2 + PLACE_BYTES(p))

#if LAMPWRIGHT_COLUMN_BYTES == 1
typedef uint8_t column;
#define COLUMN(p, at) U8(at)
#define COLUMN_BYTES(p) 1
#else
typedef uint16_t column;
#define COLUMN(p, at) (COLUMN_BYTES(p) == 1 ? U8(at) : u16(at))
#if LAMPWRIGHT_COLUMN_BYTES == 2
#define COLUMN_BYTES(p) 2
#else
#define COLUMN_BYTES(p) (((p)->flags & WIDE_COLUMNS) ? 2 : 1)
#endif
#endif

static uint16_t u16(flash at) { return (uint16_t)(U8(at) | (uint16_t)(U8(at + 1) << 8)); }

static place number(const player *p, flash at) {
#if LAMPWRIGHT_LONG_DATA
  if (p->flags & WIDE_PLACES) {
    return u16(at) | (place)U8(at + 2) << 16;
  }
#else
  (void)p;
#endif
  return u16(at);
}

/* Follows a place; gives the tables, where no section can be, if it leads past them. */
static flash follow(const player *p, flash at) {
  place to = number(p, at);
  if (to >= (place)(p->tables - p->data)) {
    return p->tables;
  }
  return p->data + to;
}

/* ---- playing ---- */

#if defined(__AVR__) && !LAMPWRIGHT_PORTABLE

/* In lampwright_player_avr.S; told below. */
extern flash lampwright_avr_patches(const player *p, flash at, flash lamp);
extern uint8_t lampwright_avr_advance(const player *p, voice *v, flash lamp, uint8_t count);

#define lamp_patches lampwright_avr_patches
#define advance(p, v, lamp) lampwright_avr_advance(p, v, lamp, 1)

/* Shows the next frame of all lamps; 0 after a fault. */
static uint8_t show_frame(player *p) {
  uint8_t lamps = p->lamps;
  if (lamps == 0) {
    return 1;
  }
  return lampwright_avr_advance(p, p->voices, p->tables, lamps);
}

#else

/* Carries out PATCH and FILL; gives the place of the first other byte, 0 after a fault. */
static flash patches(const player *p, flash at, column base) {
  for (;;) {
    uint8_t op;
    uint8_t pattern;
    uint8_t total;
    uint8_t left;
    column to;
    flash from;
    if (at >= p->tables) {
      return 0;
    }
    op = U8(at);
    if (op < PATCH || op >= ROWS) {
      return at;
    }
    at++;
    pattern = op & (FILL - PATCH - 1);
    total = pattern;
    to = (column)(base + COLUMN(p, at));
    at += COLUMN_BYTES(p);
    if (op >= FILL) {
      total = U8(at++);
    }
    if (pattern >= (place)(p->tables - at)) {
      return 0;
    }
    from = at;
    left = pattern;
    at += pattern;
    at++;
    for (;;) {
      if (to >= p->frame_bytes) {
        return 0;
      }
      p->buffer[to++] = U8(from++);
      if (total == 0) {
        break;
      }
      total--;
      if (left == 0) {
        left = pattern;
        from -= pattern;
        from--;
      } else {
        left--;
      }
    }
  }
}

/* Whether a run of columns leaves the frame. */
static uint8_t strays(const player *p, column first, uint8_t count, int8_t stride) {
  /* At most 8190 + 254 x 128, so that 16 bits tell a column before the frame from one in it. */
  uint16_t last = (uint16_t)(first + (uint16_t)((uint8_t)(count - 1) * stride));
  return count == 0 || first >= p->frame_bytes || last >= p->frame_bytes;
}

/* Gives columns the value of others, in order, so that a value can run on. */
static NOINLINE uint8_t echo(const player *p, flash at, column base) {
  uint8_t echoes = U8(at++);
  for (; echoes != 0; echoes--) {
    column first;
    column source;
    uint8_t count;
    int8_t stride;
    uint8_t *to;
    uint8_t *from;
    if (at >= p->tables) {
      return 0;
    }
    first = (column)(base + COLUMN(p, at));
    at += COLUMN_BYTES(p);
    source = (column)(base + COLUMN(p, at));
    at += COLUMN_BYTES(p);
    count = U8(at++);
    stride = (int8_t)U8(at++);
    if (strays(p, first, count, stride) || strays(p, source, count, stride)) {
      return 0;
    }
    to = p->buffer + first;
    from = p->buffer + source;
    do {
      *to = *from;
      to += stride;
      from += stride;
    } while (--count != 0);
  }
  return 1;
}

static NOINLINE uint8_t show_wave(const player *p, voice *v, flash at, column base) {
  uint16_t size = u16(at);
  uint16_t shared = v->at.phase;
  uint16_t next = (uint16_t)(shared + u16(at + 2));
  uint8_t groups = U8(at + 4);
  if (next >= size) {
    next = (uint16_t)(next - size);
  }
  v->at.phase = next;
  at += 5;
  for (; groups != 0; groups--) {
    column first;
    uint8_t *to;
    uint8_t slots;
    int8_t stride;
    uint16_t phase;
    uint16_t step;
    flash shape;
    uint8_t kind;
    uint16_t turn;
    uint16_t from;
    uint16_t length;
    if (at >= p->tables) {
      return 0;
    }
    shape = follow(p, at);
    at += PLACE_BYTES(p);
    first = (column)(base + COLUMN(p, at));
    at += COLUMN_BYTES(p);
    slots = U8(at++);
    stride = (int8_t)U8(at++);
    phase = (uint16_t)(shared + u16(at));
    at += 2;
    step = u16(at);
    at += 2;
    kind = U8(shape++);
    turn = (uint16_t)(size + 1 - kind);
    from = u16(shape);
    shape += 2;
    length = u16(shape);
    shape += 2;
    if (shape >= p->tables || length >= (place)(p->tables - shape) ||
        strays(p, first, slots, stride)) {
      return 0;
    }
    if (phase >= size) {
      phase = (uint16_t)(phase - size);
    }
    to = p->buffer + first;
    do {
      uint16_t i = phase;
      if (kind) {
        i = (uint16_t)(turn - i);
        if (i > phase) {
          i = phase;
        }
      }
      i = i < from ? 0 : (uint16_t)(i - from);
      if (i > length) {
        i = length;
      }
      *to = U8(shape + i);
      to += stride;
      phase = (uint16_t)(phase + step);
      if (phase >= size) {
        phase = (uint16_t)(phase - size);
      }
    } while (--slots != 0);
  }
  return echo(p, at, base);
}

static NOINLINE uint8_t show_row(const player *p, voice *v, flash at, uint8_t kind, column base) {
  uint8_t groups = U8(at++);
  flash from = v->at.place;
  flash tables = p->tables;
  uint8_t held = v->held;
  uint8_t ok = 1;
  if (kind & FLAGGED) {
    uint8_t bits = held;
    if (bits == EMPTY) {
      bits = U8(from++);
      held = (uint8_t)(bits << 1 | 1);
    } else {
      held = (uint8_t)(held << 1);
    }
    if (!(bits & 128)) {
      goto done;
    }
  }
  for (; groups != 0; groups--) {
    column first = (column)(base + COLUMN(p, at));
    uint8_t *to;
    uint8_t slots;
    int8_t stride;
    at += COLUMN_BYTES(p);
    slots = U8(at++);
    stride = (int8_t)U8(at++);
    if (strays(p, first, slots, stride) || slots > tables - from) {
      return 0;
    }
    to = p->buffer + first;
    if (kind & RAW) {
      do {
        *to = U8(from++);
        to += stride;
      } while (--slots != 0);
      continue;
    }
    do {
      uint8_t value = 0;
      uint8_t rule;
      uint8_t width;
      if (at >= tables) {
        return 0;
      }
      rule = U8(at++);
      for (width = rule & WIDTH_MASK; width != 0; width--) {
        value = (uint8_t)(value << 1);
        if (held == EMPTY) {
          if (from >= tables) {
            return 0;
          }
          held = U8(from++);
          if (held & 128) {
            value++;
          }
          held = (uint8_t)(held << 1 | 1);
        } else {
          if (held & 128) {
            value++;
          }
          held = (uint8_t)(held << 1);
        }
      }
      value = (uint8_t)(value + U8(at++));
      if (rule & STEP) {
        value = (uint8_t)(value + *to);
      } else if (rule & SCALED) {
        column source = (column)(base + COLUMN(p, at));
        uint8_t factor;
        at += COLUMN_BYTES(p);
        factor = U8(at++);
        if (source >= p->frame_bytes) {
          return 0;
        }
        value = (uint8_t)(value + ((uint16_t)(p->buffer[source] * factor) >> 8));
      }
      *to = value;
      to += stride;
    } while (--slots != 0);
  }
  ok = echo(p, at, base);
done:
  v->at.place = from;
  v->held = held;
  return ok;
}

/* A row of the lamp's bytes as they are. */
static NOINLINE uint8_t show_plain(const player *p, voice *v, uint16_t count, column base) {
  flash from = v->at.place;
  uint8_t *to = p->buffer + base;
  if (base >= p->frame_bytes || count > p->frame_bytes - base ||
      count > (place)(p->tables - from)) {
    return 0;
  }
  for (; count != 0; count--) {
    *to++ = U8(from++);
  }
  v->at.place = from;
  return 1;
}

/* Shows the next frame of a lamp; 0 after a fault. */
static uint8_t advance(const player *p, voice *v, flash lamp) {
  column base = (column)u16(lamp);
  uint8_t ok = 1;
  flash section;
  flash body;
  uint8_t kind;
  uint8_t fresh = 0;
  if (v->left == 0 && v->round == 0) {
    fresh = 1;
    if (v->entry >= p->tables) {
      return 0;
    }
    v->round = u16(v->entry);
    if (v->round == 0) {
      place back = number(p, v->entry + 2);
      if (back == 0) {
        v->entry = 0;
        return 1;
      }
      if (back > (place)(v->entry - p->data)) {
        return 0;
      }
      v->entry -= back;
      v->round = u16(v->entry);
      if (v->round == 0) {
        return 0;
      }
    }
  }
  section = follow(p, v->entry + 2);
  if (section >= p->tables) {
    return 0;
  }
  kind = U8(section++);
  body = section + 2;
  if (v->left == 0) {
    uint8_t frames = 255;
    flash instructions = body;
    flash at;
    uint16_t skip = u16(section);
    if ((kind & PLAIN) == PLAIN) {
      if (fresh) {
        v->held = EMPTY;
        v->at.place = body;
      }
    } else if (skip >= (place)(p->tables - body)) {
      return 0;
    } else if (fresh || !(kind & WAVE)) {
      instructions += skip;
      at = instructions;
      if (!fresh) {
        at = v->at.place;
      }
      at = patches(p, at, base);
      if (at != 0 && U8(at) == AGAIN) {
        at = patches(p, instructions, base);
      }
      if (at == 0) {
        return 0;
      }
      v->held = EMPTY;
      if (kind & WAVE) {
        v->at.phase = 0;
      } else {
        uint8_t op = U8(at++);
        if (op == ROWS) {
          frames = U8(at++);
        } else {
          frames = (uint8_t)(op + 1);
          v->held = 0;
        }
        v->at.place = at;
      }
    }
    if (frames > v->round) {
      frames = (uint8_t)v->round;
    }
    if (frames == 0) {
      return 0;
    }
    v->left = frames;
    v->round = (uint16_t)(v->round - frames);
  }
  if (v->held != 0) {
    if ((kind & PLAIN) == PLAIN) {
      ok = show_plain(p, v, u16(section), base);
    } else if (kind & WAVE) {
      ok = show_wave(p, v, body, base);
    } else {
      ok = show_row(p, v, body, kind, base);
    }
  }
  v->left--;
  if (v->left == 0 && v->round == 0) {
    v->entry += ENTRY_BYTES(p);
  }
  return ok;
}

static flash lamp_patches(const player *p, flash at, flash lamp) {
  return patches(p, at, (column)u16(lamp));
}

/* Shows the next frame of all lamps; 0 after a fault. */
static uint8_t show_frame(player *p) {
  flash lamp = p->tables;
  voice *v = p->voices;
  uint8_t n = p->lamps;
  for (; n != 0; n--) {
    if (v->held == 0 && v->left > 1) {
      v->left--;
    } else if (v->entry != 0 && !advance(p, v, lamp)) {
      return 0;
    }
    v++;
    lamp += LAMP_BYTES(p);
  }
  return 1;
}

#endif

/* ---- opening and choosing ---- */

/* Makes all dark for good. */
static NOINLINE uint8_t fault(player *p) {
  p->lamps = 0;
  memset(p->buffer, 0, p->frame_bytes);
  return LAMPWRIGHT_FAULT;
}

uint8_t lampwright_player_frame(player *p) {
  if (!show_frame(p)) {
    return fault(p);
  }
  return LAMPWRIGHT_OK;
}

static uint32_t checksum(flash from, flash to) {
  uint32_t crc = 0xFFFFFFFFu;
  while (from != to) {
    uint8_t i;
    crc ^= U8(from++);
    for (i = 8; i != 0; i--) {
      uint8_t odd = crc & 1;
      crc >>= 1;
      if (odd) {
        crc ^= 0xEDB88320u;
      }
    }
  }
  return ~crc;
}

static uint32_t u24(flash at) { return u16(at) | (uint32_t)U8(at + 2) << 16; }

/* Place of a scene's table. */
static flash scene_at(const player *p, uint8_t scene) {
  uint8_t lamps = p->lamps;
  return p->tables + (uint16_t)(lamps * LAMP_BYTES(p)) +
         (place)scene * (uint16_t)(7 + lamps * PLACE_BYTES(p));
}

uint8_t lampwright_player_open(player *p, flash data, place size, uint8_t *buffer,
                               uint16_t buffer_bytes) {
  uint8_t flags;
  place tables;
  memset(p, 0, sizeof *p);
  memset(buffer, 0, buffer_bytes);
  if (size < 32 || u16(data) != MAGIC) {
    return LAMPWRIGHT_NOT_PACKED;
  }
  flags = U8(data + FLAGS_AT);
  if (U8(data + VERSION_AT) != VERSION || flags > (WIDE_COLUMNS | WIDE_PLACES)) {
    return LAMPWRIGHT_VERSION;
  }
  if (u24(data + SIZE_AT) != size) {
    return LAMPWRIGHT_SIZE;
  }
  if (checksum(data + CHECKED_FROM, data + size) !=
      (u24(data + CRC_AT) | (uint32_t)U8(data + CRC_AT + 3) << 24)) {
    return LAMPWRIGHT_CHECKSUM;
  }
  p->data = data;
  p->buffer = buffer;
  p->flags = flags;
  p->frame_bytes = u16(data + FRAME_BYTES_AT);
  p->lamps = U8(data + LAMPS_AT);
  tables = number(p, data + TABLES_AT);
  p->tables = data + tables;
  if (p->frame_bytes > buffer_bytes || p->lamps > LAMPWRIGHT_MAX_LAMPS ||
#if LAMPWRIGHT_COLUMN_BYTES == 1
      p->frame_bytes > 256 ||
#endif
#if LAMPWRIGHT_COLUMN_BYTES != 0
      COLUMN_BYTES(p) != 1 + (flags & WIDE_COLUMNS) ||
#endif
      (!LAMPWRIGHT_LONG_DATA && (flags & WIDE_PLACES))) {
    p->lamps = 0;
    return LAMPWRIGHT_LIMIT;
  }
  /* The scenes end with the data, and at least one lamp and one scene stand before its end. */
  if (tables > size || p->lamps == 0 || U8(data + SCENES_AT) == 0 ||
      (place)(scene_at(p, U8(data + SCENES_AT)) - data) > size) {
    p->lamps = 0;
    return LAMPWRIGHT_FAULT;
  }
  return LAMPWRIGHT_OK;
}

/* A lamp's table. */
static flash lamp_at(const player *p, uint8_t lamp) {
  return p->tables + (uint16_t)(lamp * LAMP_BYTES(p));
}

/* Clears a lamp and starts its program in a scene, unless dark; 0 after a fault. */
static uint8_t start(player *p, uint8_t lamp, uint8_t scene) {
  voice *v = &p->voices[lamp];
  flash table = lamp_at(p, lamp);
  flash at;
  memset(v, 0, sizeof *v);
  if (number(p, table + 2) == 0) {
    uint16_t base = u16(table);
    for (; base < p->frame_bytes; base++) {
      p->buffer[base] = 0;
    }
  } else if (lamp_patches(p, follow(p, table + 2), table) == 0) {
    return 0;
  }
  if (scene != LAMPWRIGHT_DARK) {
    at = follow(p, scene_at(p, scene) + 7 + (uint16_t)(lamp * PLACE_BYTES(p)));
    if (at != p->data) {
      at = lamp_patches(p, at, table);
      if (at == 0) {
        return 0;
      }
      v->entry = at + 1;
    }
  }
  return 1;
}

/* Goes on from the start of a program until the next frame is the given one; 0 after a fault. */
static uint8_t seek(player *p, uint8_t lamp, uint32_t ahead) {
  voice *v = &p->voices[lamp];
  flash first = v->entry;
  if (first == 0) {
    return 1;
  }
  for (;;) {
    uint16_t frames;
    if (v->entry >= p->tables) {
      return 0;
    }
    frames = u16(v->entry);
    if (frames > ahead) {
      break;
    }
    ahead -= frames;
    if (frames != 0) {
      v->entry += ENTRY_BYTES(p);
    } else if (v->entry == first || number(p, v->entry + 2) == 0) {
      return 1;
    } else {
      v->entry = first;
    }
  }
  for (; (uint16_t)ahead != 0; ahead--) {
    if (!advance(p, v, lamp_at(p, lamp))) {
      return 0;
    }
  }
  return 1;
}

uint8_t lampwright_player_lamp(player *p, uint8_t lamp, uint8_t scene, uint32_t frame) {
  if (lamp >= p->lamps || (scene != LAMPWRIGHT_DARK && scene >= U8(p->data + SCENES_AT))) {
    return LAMPWRIGHT_ARGUMENT;
  }
  if (!start(p, lamp, scene) || !seek(p, lamp, frame)) {
    return fault(p);
  }
  return LAMPWRIGHT_OK;
}

uint8_t lampwright_player_scene(player *p, uint8_t scene) {
  uint8_t lamp = p->lamps;
  if (lamp == 0 || scene >= U8(p->data + SCENES_AT)) {
    return LAMPWRIGHT_ARGUMENT;
  }
  do {
    lamp--;
    if (!start(p, lamp, scene)) {
      return fault(p);
    }
  } while (lamp != 0);
  return LAMPWRIGHT_OK;
}

uint16_t lampwright_player_chain_bytes(const player *p, uint8_t chain) {
  if (p->lamps == 0 || chain >= U8(p->data + CHAINS_AT)) {
    return 0;
  }
  return u16(scene_at(p, U8(p->data + SCENES_AT)) + (uint16_t)(2 * chain));
}

uint8_t lampwright_player_describe(const player *p, uint8_t scene, lampwright_scene *description) {
  flash at;
  if (p->lamps == 0 || scene >= U8(p->data + SCENES_AT)) {
    return LAMPWRIGHT_ARGUMENT;
  }
  at = scene_at(p, scene);
  description->frames = u24(at);
  description->period_us = u24(at + 3);
  description->loops = U8(at + 6);
  return LAMPWRIGHT_OK;
}
