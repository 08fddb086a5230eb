/*
 * Situations of Lampwright. The tables are told in docs/packed.md of Lampwright, the contract in
 * lampwright_situations.h.
 *
 * Nothing in the tables is trusted: what is written to is compared with the room that there is, and
 * what is read with the end of the data. On AVR, lampwright_situations_avr.S does it.
 */
#include "lampwright_situations.h"

#if !LAMPWRIGHT_BY_ASSEMBLER

#include <string.h>

#if LAMPWRIGHT_TIME_BYTES == 1
typedef uint8_t frames;
#elif LAMPWRIGHT_TIME_BYTES == 2
typedef uint16_t frames;
#else
typedef uint32_t frames;
#endif

/* Kinds of an input; the number of its centre is in the bits above. */
#define LEARNS 1
#define SWITCH 2
#define ACTIVE_LOW 3
#define KIND(input) ((input)&3)
#define CENTRE(input) ((input) >> 2)

/* What is kept of a switch. */
#define SAMPLE 1
#define BEFORE 2
#define ON 4

/* Widths of servo pulses, in microseconds. */
#define LEAST 800
#define MOST 2200
#define MIDDLE 1500
#define LEAST_CENTRE 1400
#define MOST_CENTRE 1600
#define LEARNT_FROM 16

/* Flags of a situation. */
#define ANY 1
#define TOGGLES 2
#define AFTER 4
#define LINGERS 8
#define CLOCK 16
#define LOOPS 32
#define ASKED 64

/* Kinds of a condition. */
#define NEVER 0
#define WIDTH 1
#define LOST 2
#define CONTACT 3
#define OTHER 4
#define ENDED 5
#define NOT 0x40
#define TAPS 0x80

/* States of a situation. */
#define IS 1
#define WAS 2
#define HELD 4

#define NONE 255
#define HEAD_BYTES 6
#define REMEMBERED LAMPWRIGHT_CONDITION_BYTES

#define U8(at) LAMPWRIGHT_READ(at)

typedef const uint8_t *flash;

/*
 * Whether a bit is set that the data may have at all: what no situation of a project asks for takes
 * no program memory.
 */
#if !defined(LAMPWRIGHT_USES)
#define LAMPWRIGHT_USES 0xFFFF
#endif
#define USES(flags, bit) (((LAMPWRIGHT_USES) & (bit)) && ((flags) & (bit)))
#define USES_SWITCHES ((LAMPWRIGHT_USES)&0x100)
#define USES_CENTRES ((LAMPWRIGHT_USES)&0x200)
#define USES_TAPS ((LAMPWRIGHT_USES)&0x400)
#define USES_OTHERS ((LAMPWRIGHT_USES)&0x800)
#define USES_ENDED ((LAMPWRIGHT_USES)&0x1000)

#if defined(__GNUC__)
#define NOINLINE __attribute__((noinline))
#else
#define NOINLINE
#endif

struct input_state {
  uint16_t value; /* a width, or their sum while the centre is learnt; bits of a switch */
  frames left;    /* frames until a channel is lost */
};

/* One piece, so that it is cleared in one go. */
static struct {
  uint32_t now; /* the frame that is next */
  struct input_state inputs[LAMPWRIGHT_INPUTS];
  uint16_t centre[LAMPWRIGHT_CENTRES]; /* widths learnt from so far, then the centre */
  uint8_t state[LAMPWRIGHT_SITUATIONS];
  frames slots[LAMPWRIGHT_SLOTS];
  uint8_t remembered[REMEMBERED];
  /* Where the tables are read, and the bit of what conditions remember. */
  flash at;
  uint8_t bit;
  uint8_t mask;
  flash end;
  uint8_t bad;
} show;

#define REFUSE() (show.bad = 1)

static NOINLINE uint8_t next(void) {
  if (show.at >= show.end) {
    REFUSE();
    return 0;
  }
  return U8(show.at++);
}

static NOINLINE uint16_t next16(void) {
  uint8_t low = next();
  return (uint16_t)(low | (uint16_t)next() << 8);
}

#if LAMPWRIGHT_TIME_BYTES == 1
#define TIME_BYTES 1
#define duration() next()
#elif LAMPWRIGHT_TIME_BYTES == 2
#define TIME_BYTES 2
#define duration() next16()
#else
/* Data of every kind. */
#define TIME_BYTES time_bytes
static uint8_t time_bytes;

static frames duration(void) {
  frames number = 0;
  uint8_t shift;
  for (shift = 0; shift < 8 * time_bytes; shift = (uint8_t)(shift + 8)) {
    number |= (frames)next() << shift;
  }
  return number;
}
#endif

/* The counter that is named next. */
static NOINLINE frames *slot(void) {
  uint8_t number = next();
  if (number >= LAMPWRIGHT_SLOTS) {
    REFUSE();
    number = 0;
  }
  return &show.slots[number];
}

/* Counts down to 0. */
static NOINLINE frames down(frames *left) {
  if (*left != 0) {
    --*left;
  }
  return *left;
}

/* Makes all dark for good. */
static NOINLINE uint8_t dark(lampwright_player *player, uint8_t status) {
  (void)lampwright_player_dark(player);
  return status;
}

/* Begins to read behind the head, which it gives; 0 if there is no show. */
static NOINLINE flash begin(const lampwright_player *player) {
  flash head = lampwright_player_show(player);
  if (head != 0) {
    show.at = head + HEAD_BYTES;
    show.end = lampwright_player_end(player);
  }
  return head;
}

uint8_t lampwright_situations_open(lampwright_player *player) {
  static const uint8_t room[HEAD_BYTES] LAMPWRIGHT_DATA = {
      LAMPWRIGHT_TIME_BYTES, LAMPWRIGHT_INPUTS, LAMPWRIGHT_CENTRES,
      LAMPWRIGHT_SITUATIONS, LAMPWRIGHT_SLOTS,  REMEMBERED};
  flash head = lampwright_player_show(player);
  uint8_t i;
  memset(&show, 0, sizeof show);
  if (head == 0) {
    return dark(player, LAMPWRIGHT_NOT_PACKED);
  }
#if LAMPWRIGHT_TIME_BYTES > 2
  time_bytes = U8(head);
  if (time_bytes != 1 && time_bytes != 2 && time_bytes != 4) {
    return dark(player, LAMPWRIGHT_FAULT);
  }
#endif
  {
    uint32_t bytes = (uint32_t)(lampwright_player_end(player) - head);
    if (bytes < HEAD_BYTES ||
        bytes < (uint32_t)(HEAD_BYTES + U8(head + 1) * (1 + TIME_BYTES) + 2 * U8(head + 3))) {
      return dark(player, LAMPWRIGHT_FAULT);
    }
  }
  for (i = 0; i < HEAD_BYTES; i++) {
    uint8_t asked = U8(head + i);
    uint8_t most = U8(room + i);
    if (asked > most || (i == 0 && asked != TIME_BYTES)) {
      return dark(player, LAMPWRIGHT_LIMIT);
    }
  }
  return LAMPWRIGHT_OK;
}

void lampwright_situations_input(const lampwright_player *player, uint8_t input, uint16_t reading) {
  flash head = begin(player);
  struct input_state *in;
  uint8_t kind;
  uint16_t middle = MIDDLE;
  if (head == 0 || input >= U8(head + 1)) {
    return;
  }
  in = &show.inputs[input];
  show.at += (uint16_t)(input * (1 + TIME_BYTES));
  kind = next();
  if (USES_SWITCHES && KIND(kind) >= SWITCH) {
    in->value &= (uint8_t)~SAMPLE;
    if ((reading != 0) != (KIND(kind) == ACTIVE_LOW)) {
      in->value |= SAMPLE;
    }
    return;
  }
  if (reading < LEAST || reading > MOST) {
    return;
  }
  if (USES_CENTRES && KIND(kind) == LEARNS && CENTRE(kind) < LAMPWRIGHT_CENTRES) {
    uint16_t *learnt = &show.centre[CENTRE(kind)];
    if (*learnt < LEARNT_FROM) {
      in->value = (uint16_t)(in->value + reading);
      if (++*learnt < LEARNT_FROM) {
        return;
      }
      *learnt = in->value / LEARNT_FROM;
      if (*learnt < LEAST_CENTRE || *learnt > MOST_CENTRE) {
        *learnt = MIDDLE;
      }
    }
    middle = *learnt;
  }
  in->value = (uint16_t)(reading - middle + MIDDLE);
  in->left = (frames)(duration() + 1);
}

/* Counts short spells; 1 in the frame after the last in which there were so many. */
static uint8_t taps(uint8_t on, uint8_t before) {
  frames *spell = slot();
  frames longest = duration();
  frames *count = slot();
  frames pause = duration();
  uint8_t wanted = next();
  uint8_t counted = 0;
  if (on != before) {
    if (!on) {
      *count = *spell > longest ? 0 : *count == 255 ? 255 : (frames)(*count + 1);
    }
    *spell = on;
  } else if (*spell < (on ? longest + 1 : pause)) {
    ++*spell;
  }
  if (!on && *count != 0 && *spell >= pause) {
    counted = *count == wanted;
    *count = 0;
  }
  return counted;
}

/* Whether a condition of a situation is on in this frame. */
static uint8_t condition(uint8_t inputs, uint8_t situation) {
  uint8_t flags = next();
  uint8_t subject = next();
  uint8_t kind = flags & (NOT - 1);
  uint8_t before = 0;
  uint8_t on = 0;
  uint8_t *memory = 0;
  if (kind == WIDTH || (USES_TAPS && (flags & TAPS))) {
    if (show.bit == REMEMBERED) {
      REFUSE();
      show.bit = 0;
    }
    memory = &show.remembered[show.bit];
    if (*memory & show.mask) {
      before = 1;
    }
  }
  if (USES_OTHERS && kind >= OTHER) {
    if (subject >= situation) {
      REFUSE();
      subject = 0;
    }
    on = show.state[subject] & IS;
    if (USES_ENDED && kind != OTHER) {
      frames *ago = slot();
      on = (uint8_t)(duration() < *ago && !on);
    }
  } else if (kind != NEVER) {
    struct input_state *in;
    if (subject >= inputs) {
      REFUSE();
      subject = 0;
    }
    in = &show.inputs[subject];
    if (USES_SWITCHES && kind == CONTACT) {
      on = (in->value & ON) != 0;
    } else {
      on = in->left == 0;
      if (kind == WIDTH) {
        int16_t us = (int16_t)in->value;
        int16_t under = (int16_t)((int16_t)next16() - us);
        int16_t over = (int16_t)(us - (int16_t)next16());
        int16_t more = (int16_t)next16();
        if (!before) {
          more = 0;
        }
        on = !on && under <= more && over <= more;
      }
    }
  }
  if (kind > ENDED || ((flags & NOT) && kind != CONTACT && kind != OTHER)) {
    REFUSE();
  }
  if (flags & NOT) {
    on ^= 1;
  }
  if (memory != 0) {
    *memory ^= show.mask;
    if (on == before) {
      *memory ^= show.mask;
    }
    show.mask = (uint8_t)(show.mask << 1);
    if (show.mask == 0) {
      show.mask = 1;
      show.bit++;
    }
  }
  if (USES_TAPS && (flags & TAPS)) {
    on = taps(on, before);
  }
  return on;
}

/* Works out a situation; 1 if it begins or ends in this frame. */
static uint8_t situation(uint8_t inputs, uint8_t number) {
  uint8_t flags = next();
  uint8_t count = next();
  uint8_t old = show.state[number];
  uint8_t is = 0;
  for (; count != 0; count--) {
    /* Each at every frame: one that isn't looked at would miss taps. */
    is |= (uint8_t)(condition(inputs, number) ^ (~flags & ANY));
  }
  /* With ANY, whether one is on; else whether one is off, the other way round. */
  is ^= ~flags & ANY;
  if (USES(flags, AFTER)) {
    frames *held = slot();
    frames after = duration();
    if (!is) {
      *held = 0;
    } else if (*held < after) {
      ++*held;
      is = 0;
    }
  }
  if (USES(flags, LINGERS)) {
    frames *lingers = slot();
    frames linger = duration();
    if (is) {
      *lingers = linger;
    } else if (down(lingers) != 0) {
      is = IS;
    }
  }
  if (USES(flags, TOGGLES)) {
    is = is ? HELD | ((old & HELD ? 0 : IS) ^ (old & IS)) : old & IS;
  }
  show.state[number] = (uint8_t)(is | (old & IS) * WAS);
  if (USES(flags, CLOCK)) {
    frames *at = slot();
    frames last = duration();
    if (is & IS) {
      if (!(old & IS) || (*at >= last && USES(flags, LOOPS))) {
        *at = 0;
      } else if (*at < last) {
        ++*at;
      }
    }
  }
  if (USES(flags, ASKED)) {
    frames *ago = slot();
    frames most = duration();
    if (!(is & IS)) {
      if (old & IS) {
        *ago = most;
      } else {
        (void)down(ago);
      }
    }
  }
  return (uint8_t)((is ^ old) & IS);
}

/* Starts a lamp in the scene of a situation, at the frame that is due; 0 if there is none. */
static uint8_t start(lampwright_player *player, uint8_t lamp, flash entry) {
  uint8_t scene = U8(entry);
  uint8_t clock = U8(entry + 1);
  lampwright_scene description;
  uint32_t frame;
  if (clock < LAMPWRIGHT_SLOTS) {
    frame = show.slots[clock];
  } else {
    if (lampwright_player_describe(player, scene, &description) != LAMPWRIGHT_OK) {
      return 0;
    }
    frame = show.now;
    if (description.loops) {
      frame %= description.frames;
    } else if (frame >= description.frames) {
      frame = description.frames - 1;
    }
  }
  return lampwright_player_lamp(player, lamp, scene, frame) == LAMPWRIGHT_OK;
}

/* Starts the lamps that another situation has now; 0 after a fault. */
static uint8_t lamps(lampwright_player *player, flash directory, uint8_t count) {
  uint8_t lamp;
  for (lamp = 0; lamp < player->lamps; lamp++) {
    uint8_t is = NONE;
    uint8_t was = NONE;
    uint8_t wanting;
    for (wanting = next(); wanting != 0; wanting--) {
      uint8_t number = next();
      uint8_t s;
      if (number >= count) {
        return 0;
      }
      s = show.state[number];
      if (s & IS) {
        is = number;
      }
      if (s & WAS) {
        was = number;
      }
    }
    if (is == was) {
      continue;
    }
    if (is == NONE) {
      (void)lampwright_player_lamp(player, lamp, LAMPWRIGHT_DARK, 0);
    } else if (!start(player, lamp, directory + 2 * is)) {
      return 0;
    }
  }
  return 1;
}

uint8_t lampwright_situations_frame(lampwright_player *player) {
  flash head = begin(player);
  uint8_t inputs;
  uint8_t count;
  uint8_t i;
  uint8_t changed = 0;
  flash directory;
  if (head == 0) {
    return LAMPWRIGHT_FAULT;
  }
  show.bad = 0;
  show.bit = 0;
  show.mask = 1;
  inputs = U8(head + 1);
  count = U8(head + 3);
  for (i = 0; i < inputs; i++) {
    struct input_state *in = &show.inputs[i];
    if (KIND(next()) < SWITCH || !USES_SWITCHES) {
      (void)down(&in->left);
    } else {
      uint8_t kept = (uint8_t)in->value;
      uint8_t sample = kept & SAMPLE;
      if (!(kept & BEFORE) == !sample) {
        kept = (uint8_t)(sample * ON);
      }
      in->value = (uint8_t)((kept & ON) | sample * (SAMPLE | BEFORE));
    }
    show.at += TIME_BYTES;
  }
  directory = show.at;
  show.at += 2 * count;
  for (i = 0; i < count; i++) {
    changed |= situation(inputs, i);
  }
  if ((changed && !lamps(player, directory, count)) || show.bad) {
    return dark(player, LAMPWRIGHT_FAULT);
  }
  show.now++;
  return lampwright_player_frame(player);
}

#endif
