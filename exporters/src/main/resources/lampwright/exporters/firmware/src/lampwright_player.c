/*
 * Lampwright player. The format is told in docs/packed.md of Lampwright, the contract in
 * lampwright_player.h.
 *
 * Nothing in the data is trusted. The tables are at its end and are at least as long as any
 * header that is read in one go: what begins before the tables or at them, ends in the data. So a
 * header is read first, and refused if it passed the tables, before anything is done with it.
 * Columns are compared with the frame before a run of them is written.
 */
#include "lampwright_player.h"

#include <string.h>

#if LAMPWRIGHT_MAX_LAMPS < 1 || LAMPWRIGHT_MAX_LAMPS > 255
#error "lampwright_config.h: LAMPWRIGHT_MAX_LAMPS needs 1 to 255"
#endif

/* Header. */
#define CRC_AT 2
#define CHECKED_FROM 6
#define VERSION_AT 6
#define VERSION 2
#define FLAGS_AT 7
#define WIDE_COLUMNS 1
#define WIDE_PLACES 2
#define SHOW 4
/* On AVR, a player without situations refuses data that has them. */
#if LAMPWRIGHT_BY_ASSEMBLER && !defined(LAMPWRIGHT_SITUATIONS)
#define KNOWN_FLAGS 3
#elif LAMPWRIGHT_CEILING
#define KNOWN_FLAGS 15
#else
#define KNOWN_FLAGS 7
#endif
#define FRAME_BYTES_AT 8
#define LAMPS_AT 10
#define SCENES_AT 11
#define SIZE_AT 12
#define LEAST_BYTES 27
#define HEAD_BYTES 18
#define HEADER_BYTES(p) (uint8_t)(SIZE_AT + 2 * PLACE_BYTES(p))

/* Section kinds. */
#define RAW 1
#define WAVE 2
#define PLAIN 3 /* both bits of RAW and WAVE */
#define FLAGGED 4
#define LONG_HEAD 8
#define SWINGS 16
#define ALL_KINDS 31

/* Instructions. */
#define PATCH 0x80
#define FILL 0xC0
#define ROWS 0xE0
#define AGAIN 0xE1
#define GO 0xE2

/* What replaces frames in the last entry of a program. */
#define REST 0x80
#define BACK 0x81
#define MAX_FRAMES 4096

/* Rules. */
#define STEP 0x10
#define SCALED 0x20
#define WIDTH_MASK 15
#define MOST_WIDTH 8

/* Waves. */
#define MOST_WAVE 32767
#define MOST_FOLD 2

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
#define LAMP_BYTES(p) (uint8_t)(COLUMN_BYTES(p) + PLACE_BYTES(p))
/* Whether the place of a dark list is a count of bytes instead. */
#define ROW_DARK(p, dark) (uint8_t)(((dark) >> 8) == (PLACE_BYTES(p) == 2 ? 0xFF : 0xFFFF))
#define BYTES_OF_FRAME(p) (uint16_t)((p)->end - (p)->buffer)

#if LAMPWRIGHT_COLUMN_BYTES == 1
#define COLUMN(p, at) U8(at)
#define COLUMN_BYTES(p) 1
#else
#define COLUMN(p, at) (COLUMN_BYTES(p) == 1 ? U8(at) : u16(at))
#if LAMPWRIGHT_COLUMN_BYTES == 2
#define COLUMN_BYTES(p) 2
#else
#define COLUMN_BYTES(p) (((p)->flags & WIDE_COLUMNS) ? 2 : 1)
#endif
#endif

static uint16_t u16(flash at) { return (uint16_t)(U8(at) | (uint16_t)(U8(at + 1) << 8)); }

/* ---- playing ---- */

#if LAMPWRIGHT_BY_ASSEMBLER

/* In lampwright_player_avr.S; told below. */
extern uint8_t lampwright_avr_start(const player *p, voice *v, flash lamp, flash program,
                                    uint8_t count);
extern uint8_t lampwright_avr_advance(const player *p, voice *v, flash lamp, uint8_t count);
extern uint8_t lampwright_avr_lamp(const player *p, uint8_t lamp, flash program, uint32_t frame);
extern uintptr_t lampwright_avr_scene(const player *p, uint8_t scene);
extern uint32_t lampwright_avr_checksum(flash from, uint16_t bytes);

#define start lampwright_avr_start
#define start_at lampwright_avr_lamp
#define scene_address lampwright_avr_scene
#define checksum lampwright_avr_checksum

/* Shows the next frame of all lamps; 0 after a fault. */
static uint8_t show_frame(player *p) {
  uint8_t lamps = p->lamps;
  if (lamps == 0) {
    return 1;
  }
  return lampwright_avr_advance(p, p->voices, p->tables, lamps);
}

#else

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

/* Follows a place, which counts back from the tables; gives the tables if it leads nowhere. */
static flash follow(const player *p, flash at) {
  place back = number(p, at);
  if (back > (place)(p->tables - p->data - HEADER_BYTES(p))) {
    return p->tables;
  }
  return p->tables - back;
}

/* A lamp's column, counted from the frame's start; 65,535, which is in no frame, if it is too far.
 */
static uint16_t where(const player *p, flash at, uint16_t base) {
  uint16_t column = (uint16_t)(base + COLUMN(p, at));
  (void)p;
  return column < base ? 0xFFFF : column;
}

/* Carries out PATCH and FILL; gives the place of the first other byte, 0 after a fault. */
static flash patches(const player *p, flash at, uint16_t base) {
  for (;;) {
    uint8_t op;
    uint8_t pattern;
    uint8_t total;
    uint8_t left;
    uint16_t to;
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
    to = where(p, at, base);
    at += COLUMN_BYTES(p);
    if (op >= FILL) {
      total = U8(at++);
    }
    if (at > p->tables || pattern >= (place)(p->tables - at) || to >= BYTES_OF_FRAME(p) ||
        total >= (uint16_t)(BYTES_OF_FRAME(p) - to)) {
      return 0;
    }
    from = at;
    left = pattern;
    at += pattern;
    at++;
    for (;;) {
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

/* Carries out a list; gives the place after it, 0 after a fault. */
static flash list(const player *p, flash at, uint16_t base) {
  at = patches(p, at, base);
  if (at == 0 || U8(at) != GO) {
    return 0;
  }
  return at + 1;
}

/* Whether a run of columns leaves the frame. */
static uint8_t strays(const player *p, uint16_t first, uint8_t count, int8_t stride) {
  uint8_t steps = (uint8_t)(count - 1);
  if (count == 0 || first >= BYTES_OF_FRAME(p)) {
    return 1;
  }
  /* At most 254 x 128. */
  if (stride < 0) {
    return (uint16_t)(steps * -stride) > first;
  }
  return (uint16_t)(steps * stride) >= (uint16_t)(BYTES_OF_FRAME(p) - first);
}

/* Reads a stride, which is present only where there is more than one to step over. */
static int8_t read_stride(flash *at, uint8_t count) {
  if (count == 1) {
    return 0;
  }
  return (int8_t)U8((*at)++);
}

/* Gives columns the value of others, in order, so that a value can run on. */
static NOINLINE uint8_t echo(const player *p, flash at, uint16_t base) {
  uint8_t echoes = U8(at++);
  if (at > p->tables) {
    return 0;
  }
  for (; echoes != 0; echoes--) {
    uint16_t first;
    uint16_t source;
    uint8_t count;
    int8_t stride;
    uint8_t *to;
    uint8_t *from;
    if (at >= p->tables) {
      return 0;
    }
    first = where(p, at, base);
    at += COLUMN_BYTES(p);
    source = where(p, at, base);
    at += COLUMN_BYTES(p);
    count = U8(at++);
    stride = read_stride(&at, count);
    if (at > p->tables || strays(p, first, count, stride) || strays(p, source, count, stride)) {
      return 0;
    }
    to = p->buffer + first;
    from = p->buffer + source;
    for (;;) {
      *to = *from;
      if (--count == 0) {
        break;
      }
      to += stride;
      from += stride;
    }
  }
  return 1;
}

static NOINLINE uint8_t show_wave(const player *p, voice *v, flash at, uint8_t kind,
                                  uint16_t base) {
  uint16_t size = u16(at);
  uint16_t pace = u16(at + 2);
  uint16_t shared = v->at.phase;
  uint16_t next = (uint16_t)(shared + pace);
  uint8_t back = 0;
  uint8_t groups;
  if (size == 0 || size > MOST_WAVE || pace >= size) {
    return 0;
  }
  if (next >= size) {
    next = (uint16_t)(next - size);
  }
  v->at.phase = next;
  at += 4;
  if (kind & SWINGS) {
    uint16_t swing = u16(at);
    if (swing >= size) {
      return 0;
    }
    back = shared >= swing;
    at += 2;
  }
  groups = U8(at++);
  for (; groups != 0; groups--) {
    uint16_t first;
    uint8_t *to;
    uint8_t slots;
    int8_t stride;
    uint16_t phase;
    uint16_t step;
    flash shape;
    uint8_t fold;
    uint16_t turn;
    uint16_t from;
    uint16_t length;
    if (at >= p->tables) {
      return 0;
    }
    shape = follow(p, at);
    at += PLACE_BYTES(p);
    first = where(p, at, base);
    at += COLUMN_BYTES(p);
    slots = U8(at++);
    stride = read_stride(&at, slots);
    phase = u16(at);
    at += 2;
    step = 0;
    if (slots != 1) {
      step = u16(at);
      at += 2;
    }
    if (at > p->tables || phase >= size || step >= size) {
      return 0;
    }
    phase = (uint16_t)(phase + shared);
    if (back) {
      step = (uint16_t)(size - step);
    }
    fold = U8(shape++);
    turn = (uint16_t)(size + 1 - fold);
    from = u16(shape);
    shape += 2;
    length = u16(shape);
    shape += 2;
    if (fold > MOST_FOLD || shape >= p->tables || length >= (place)(p->tables - shape) ||
        strays(p, first, slots, stride)) {
      return 0;
    }
    if (phase >= size) {
      phase = (uint16_t)(phase - size);
    }
    to = p->buffer + first;
    for (;;) {
      uint16_t i = phase;
      if (fold) {
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
      if (--slots == 0) {
        break;
      }
      to += stride;
      phase = (uint16_t)(phase + step);
      if (phase >= size) {
        phase = (uint16_t)(phase - size);
      }
    }
  }
  return echo(p, at, base);
}

static NOINLINE uint8_t show_row(const player *p, voice *v, flash at, uint8_t kind, uint16_t base) {
  uint8_t groups = U8(at++);
  flash from = v->at.place;
  flash tables = p->tables;
  uint8_t held = v->held;
  uint8_t ok = 1;
  if (kind & FLAGGED) {
    uint8_t bits = held;
    if (bits == EMPTY) {
      if (from >= tables) {
        return 0;
      }
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
    uint16_t first;
    uint8_t *to;
    uint8_t slots;
    int8_t stride;
    if (at >= tables) {
      return 0;
    }
    first = where(p, at, base);
    at += COLUMN_BYTES(p);
    slots = U8(at++);
    stride = read_stride(&at, slots);
    if (at > tables || strays(p, first, slots, stride)) {
      return 0;
    }
    to = p->buffer + first;
    if (kind & RAW) {
      if (slots > (place)(tables - from)) {
        return 0;
      }
      for (;;) {
        *to = U8(from++);
        if (--slots == 0) {
          break;
        }
        to += stride;
      }
      continue;
    }
    for (;;) {
      uint8_t value = 0;
      uint8_t rule;
      uint8_t width;
      if (at >= tables) {
        return 0;
      }
      rule = U8(at++);
      if ((rule & WIDTH_MASK) > MOST_WIDTH || rule >= (STEP | SCALED)) {
        return 0;
      }
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
        uint16_t source = where(p, at, base);
        uint8_t factor;
        at += COLUMN_BYTES(p);
        factor = U8(at++);
        if (source >= BYTES_OF_FRAME(p)) {
          return 0;
        }
        value = (uint8_t)(value + ((uint16_t)(p->buffer[source] * factor) >> 8));
      }
      if (at > tables) {
        return 0;
      }
      *to = value;
      if (--slots == 0) {
        break;
      }
      to += stride;
    }
  }
  ok = echo(p, at, base);
done:
  v->at.place = from;
  v->held = held;
  return ok;
}

/* A row of the lamp's bytes as they are. */
static NOINLINE uint8_t show_plain(const player *p, voice *v, uint16_t count, uint16_t base) {
  flash from = v->at.place;
  uint8_t *to = p->buffer + base;
  if (count > BYTES_OF_FRAME(p) - base || count > (place)(p->tables - from)) {
    return 0;
  }
  for (; count != 0; count--) {
    *to++ = U8(from++);
  }
  v->at.place = from;
  return 1;
}

/* Goes to the entry that is due; 0 after a fault, 2 if the program is over. */
static uint8_t enter(const player *p, voice *v) {
  flash at = v->entry + ENTRY_BYTES(p);
  if (at >= p->tables) {
    return 0;
  }
  if (U8(at) == REST) {
    v->entry = 0;
    v->held = 0;
    return 2;
  }
  if (U8(at) == BACK) {
    place back = number(p, at + 1);
    if (at + 1 + PLACE_BYTES(p) > p->tables || back > (place)(at - p->data)) {
      return 0;
    }
    at -= back;
  }
  if (at + ENTRY_BYTES(p) > p->tables) {
    return 0;
  }
  v->entry = at;
  v->round = (uint16_t)(U8(at) << 8 | U8(at + 1));
  return v->round != 0 && v->round <= MAX_FRAMES;
}

/* Whether a section is of one of the kinds that there are. */
static uint8_t known(uint8_t kind) {
  if (kind & PLAIN) {
    return kind <= ALL_KINDS && !(kind & FLAGGED) && (!(kind & SWINGS) || (kind & PLAIN) == WAVE);
  }
  return kind < SWINGS;
}

/* Shows the next frame of a lamp; 0 after a fault. */
static uint8_t advance(const player *p, voice *v, flash lamp) {
  uint16_t base = COLUMN(p, lamp);
  uint8_t fresh = 0;
  flash body;
  uint8_t kind;
  uint16_t skip;
  if (v->left == 0 && v->round == 0) {
    uint8_t entered = enter(p, v);
    if (entered != 1) {
      return entered;
    }
    fresh = 1;
  }
  body = follow(p, v->entry + 2);
  if (body >= p->tables) {
    return 0;
  }
  kind = U8(body++);
  skip = U8(body++);
  if (kind & LONG_HEAD) {
    skip = (uint16_t)(skip | U8(body++) << 8);
  }
  if (v->left == 0) {
    uint8_t frames = 255;
    if (body > p->tables || !known(kind)) {
      return 0;
    }
    if ((kind & PLAIN) == PLAIN) {
      if (fresh) {
        v->held = EMPTY;
        v->at.place = body;
      }
    } else if (skip >= (place)(p->tables - body)) {
      return 0;
    } else if (fresh || !(kind & WAVE)) {
      flash instructions = body + skip;
      v->held = EMPTY;
      if (kind & WAVE) {
        if (list(p, instructions, base) == 0) {
          return 0;
        }
        v->at.phase = 0;
      } else {
        uint8_t op;
        flash at = patches(p, fresh ? instructions : v->at.place, base);
        if (at != 0 && U8(at) == AGAIN) {
          at = patches(p, instructions, base);
        }
        if (at == 0) {
          return 0;
        }
        op = U8(at++);
        if (op == ROWS) {
          frames = U8(at++);
        } else if (op < PATCH) {
          frames = (uint8_t)(op + 1);
          v->held = 0;
        } else {
          return 0;
        }
        if (at > p->tables) {
          return 0;
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
  v->left--;
  if (v->held == 0) {
    return 1;
  }
  if ((kind & PLAIN) == PLAIN) {
    return show_plain(p, v, skip, base);
  }
  if (kind & WAVE) {
    return show_wave(p, v, body, kind, base);
  }
  return show_row(p, v, body, kind, base);
}

/* Clears a lamp; 0 after a fault. */
static uint8_t clear(const player *p, flash lamp) {
  uint16_t base = COLUMN(p, lamp);
  flash at = lamp + COLUMN_BYTES(p);
  place dark = number(p, at);
  uint16_t bytes;
  if (base >= BYTES_OF_FRAME(p)) {
    return 0;
  }
  if (dark != 0 && !ROW_DARK(p, dark)) {
    return list(p, follow(p, at), base) != 0;
  }
  bytes = (uint16_t)(BYTES_OF_FRAME(p) - base);
  if (dark != 0) {
    if ((dark & 255) >= bytes) {
      return 0;
    }
    bytes = (uint16_t)((dark & 255) + 1);
  }
  memset(p->buffer + base, 0, bytes);
  return 1;
}

/*
 * Clears lamps that follow one another and starts the programs whose places are in the data, if
 * there are any; 0 after a fault.
 */
static uint8_t start(const player *p, voice *v, flash lamp, flash program, uint8_t count) {
  for (; count != 0; count--) {
    memset(v, 0, sizeof *v);
    if (!clear(p, lamp)) {
      return 0;
    }
    if (program != 0) {
      if (number(p, program) != 0) {
        flash at = list(p, follow(p, program), COLUMN(p, lamp));
        if (at == 0) {
          return 0;
        }
        v->entry = at - ENTRY_BYTES(p);
      }
      program += PLACE_BYTES(p);
    }
    v++;
    lamp += LAMP_BYTES(p);
  }
  return 1;
}

/* Shows the next frame of all lamps; 0 after a fault. */
static uint8_t show_frame(player *p) {
  flash lamp = p->tables;
  voice *v = p->voices;
  uint8_t n = p->lamps;
  for (; n != 0; n--) {
    if (v->held == 0 && v->left != 0) {
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

NOINLINE uint8_t lampwright_player_dark(player *p) {
  p->lamps = 0;
  memset(p->buffer, 0, BYTES_OF_FRAME(p));
  return LAMPWRIGHT_FAULT;
}

uint8_t lampwright_player_frame(player *p) {
  if (!show_frame(p)) {
    return lampwright_player_dark(p);
  }
  return LAMPWRIGHT_OK;
}

static uint32_t u24(flash at) { return u16(at) | (uint32_t)U8(at + 2) << 16; }

#if !LAMPWRIGHT_BY_ASSEMBLER

static uint32_t checksum(flash from, place bytes) {
  uint32_t crc = 0xFFFFFFFFu;
  for (; bytes != 0; bytes--) {
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

/* Steps over a place for each lamp. Apart, so that controllers that can't multiply needn't. */
static NOINLINE uintptr_t over_places(const player *p, uintptr_t at) {
  return at + (uint16_t)(p->lamps * PLACE_BYTES(p));
}

/* Address of a scene's table, which need not be in the data before that was looked at. */
static uintptr_t scene_address(const player *p, uint8_t scene) {
  uintptr_t at = (uintptr_t)p->tables + (uint16_t)(p->lamps * COLUMN_BYTES(p));
  at = over_places(p, at);
  for (; scene != 0; scene--) {
    at = over_places(p, at + 6);
  }
  return at;
}

/*
 * Goes on from the start of a program until the next frame is the given one; 0 after a fault. Steps
 * over each entry twice at most.
 */
static uint8_t seek(player *p, voice *v, flash lamp, uint32_t ahead) {
  uint32_t round = 0; /* frames of all entries stepped over */
  flash first;
  flash at;
  if (v->entry == 0) {
    return 1;
  }
  first = v->entry + ENTRY_BYTES(p);
  at = first;
  for (;;) {
    if (at >= p->tables) {
      return 0;
    }
    if (U8(at) < REST) {
      uint16_t frames = (uint16_t)(U8(at) << 8 | U8(at + 1));
      if (frames == 0 || frames > MAX_FRAMES) {
        return 0;
      }
      if (frames > ahead) {
        break;
      }
      ahead -= frames;
      round += frames;
      at += ENTRY_BYTES(p);
    } else if (U8(at) == REST || at == first) {
      ahead = 0;
      break;
    } else {
      ahead %= round;
      at = first;
    }
  }
  v->entry = at - ENTRY_BYTES(p);
  for (; (uint16_t)ahead != 0; ahead--) {
    if (!advance(p, v, lamp)) {
      return 0;
    }
  }
  return 1;
}

/*
 * Starts the program of a lamp whose place is in the data, if there is one, such that the next
 * frame is the given one; 0 after a fault.
 */
static uint8_t start_at(player *p, uint8_t lamp, flash program, uint32_t frame) {
  voice *v = &p->voices[lamp];
  flash table = p->tables + (uint16_t)(lamp * LAMP_BYTES(p));
  return start(p, v, table, program, 1) && seek(p, v, table, frame);
}

#endif

#define SCENE_AT(p, scene) ((flash)scene_address(p, scene))

/* A number in the header, as wide as a place. */
static place wide(const player *p, const uint8_t *at) {
  place n = (place)(at[0] | (uint16_t)(at[1] << 8));
#if LAMPWRIGHT_LONG_DATA
  if (p->flags & WIDE_PLACES) {
    n |= (place)at[2] << 16;
  }
#else
  (void)p;
#endif
  return n;
}

/* Checks the data and gets ready to play it. */
static NOINLINE uint8_t look(player *p, place size, uint16_t buffer_bytes) {
  uint8_t head[HEAD_BYTES];
  uint8_t i;
  uint8_t flags;
  uint32_t crc;
  place tables;
  uintptr_t scenes;
  flash data = p->data;
  for (i = 0; i < HEAD_BYTES; i++) {
    head[i] = U8(data + i);
  }
  if (head[0] != 'L' || head[1] != 'W') {
    return LAMPWRIGHT_NOT_PACKED;
  }
  flags = head[FLAGS_AT];
  if (head[VERSION_AT] != VERSION || flags > KNOWN_FLAGS) {
    return LAMPWRIGHT_VERSION;
  }
#if LAMPWRIGHT_LONG_DATA || LAMPWRIGHT_COLUMN_BYTES == 0
  p->flags = flags;
#endif
#if !LAMPWRIGHT_LONG_DATA
  if (flags & WIDE_PLACES) {
    return LAMPWRIGHT_LIMIT;
  }
#endif
  if (wide(p, head + SIZE_AT) != size) {
    return LAMPWRIGHT_SIZE;
  }
  crc = checksum(data + CHECKED_FROM, size - CHECKED_FROM);
  for (i = CRC_AT; i < CHECKED_FROM; i++) {
    if (head[i] != (uint8_t)crc) {
      return LAMPWRIGHT_CHECKSUM;
    }
    crc >>= 8;
  }
  p->end = p->buffer + (head[FRAME_BYTES_AT] | (uint16_t)(head[FRAME_BYTES_AT + 1] << 8));
  p->lamps = head[LAMPS_AT];
  if (BYTES_OF_FRAME(p) > buffer_bytes
#if LAMPWRIGHT_MAX_LAMPS < 255
      || p->lamps > LAMPWRIGHT_MAX_LAMPS
#endif
#if LAMPWRIGHT_COLUMN_BYTES != 0
      || COLUMN_BYTES(p) != 1 + (flags & WIDE_COLUMNS)
#endif
  ) {
    return LAMPWRIGHT_LIMIT;
  }
  tables = wide(p, head + SIZE_AT + PLACE_BYTES(p));
  if (tables > size || p->lamps == 0) {
    return LAMPWRIGHT_FAULT;
  }
  p->tables = data + tables;
  /* The scenes end with the data, or before the show. */
  scenes = scene_address(p, head[SCENES_AT]) - (uintptr_t)data;
  if (flags & KNOWN_FLAGS & SHOW ? scenes >= size : scenes != size) {
    return LAMPWRIGHT_FAULT;
  }
#if !LAMPWRIGHT_BY_ASSEMBLER
  if (tables < HEADER_BYTES(p) || head[SCENES_AT] == 0) {
    return LAMPWRIGHT_FAULT;
  }
  for (i = 0; i < head[SCENES_AT]; i++) {
    if (u24(SCENE_AT(p, i)) == 0) {
      return LAMPWRIGHT_FAULT;
    }
  }
#endif
  return LAMPWRIGHT_OK;
}

uint8_t lampwright_player_open(player *p, flash data, place size, uint8_t *buffer,
                               uint16_t buffer_bytes) {
  uint8_t status = LAMPWRIGHT_NOT_PACKED;
  memset(p, 0, sizeof *p);
  memset(buffer, 0, buffer_bytes);
  p->data = data;
  p->buffer = buffer;
  p->end = buffer;
  if (size >= LEAST_BYTES) {
    status = look(p, size, buffer_bytes);
  }
  if (status != LAMPWRIGHT_OK) {
    p->lamps = 0;
  }
  return status;
}

uint8_t lampwright_player_lamp(player *p, uint8_t lamp, uint8_t scene, uint32_t frame) {
  flash program = 0;
  if (lamp >= p->lamps) {
    return LAMPWRIGHT_ARGUMENT;
  }
  if (scene != LAMPWRIGHT_DARK) {
    if (scene >= U8(p->data + SCENES_AT)) {
      return LAMPWRIGHT_ARGUMENT;
    }
    program = SCENE_AT(p, scene);
    if (frame >= u24(program)) {
      return LAMPWRIGHT_ARGUMENT;
    }
    program += 6 + (uint16_t)(lamp * PLACE_BYTES(p));
  }
  if (!start_at(p, lamp, program, frame)) {
    return lampwright_player_dark(p);
  }
  return LAMPWRIGHT_OK;
}

uint8_t lampwright_player_scene(player *p, uint8_t scene) {
  if (p->lamps == 0 || scene >= U8(p->data + SCENES_AT)) {
    return LAMPWRIGHT_ARGUMENT;
  }
  if (!start(p, p->voices, p->tables, SCENE_AT(p, scene) + 6, p->lamps)) {
    return lampwright_player_dark(p);
  }
  return LAMPWRIGHT_OK;
}

const uint8_t *lampwright_player_show(const player *p) {
  if (p->lamps == 0 || !(U8(p->data + FLAGS_AT) & SHOW)) {
    return 0;
  }
  return SCENE_AT(p, U8(p->data + SCENES_AT));
}

const uint8_t *lampwright_player_end(const player *p) {
  flash at = p->data + SIZE_AT;
#if LAMPWRIGHT_LONG_DATA
  if (p->flags & WIDE_PLACES) {
    return p->data + u24(at);
  }
#endif
  return p->data + u16(at);
}

uint8_t lampwright_player_describe(const player *p, uint8_t scene, lampwright_scene *description) {
  flash at;
  if (p->lamps == 0 || scene >= U8(p->data + SCENES_AT)) {
    return LAMPWRIGHT_ARGUMENT;
  }
  at = SCENE_AT(p, scene);
  description->frames = u24(at);
  description->period_us = u24(at + 3) & 0x7FFFFF;
  description->loops = U8(at + 5) >> 7;
  return LAMPWRIGHT_OK;
}
