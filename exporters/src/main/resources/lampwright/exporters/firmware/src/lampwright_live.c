#include "lampwright_live.h"

#if LAMPWRIGHT_LIVE

#include <string.h>

#include "lampwright_show.h"
#include "lampwright_target.h"

#if !LAMPWRIGHT_LIVE_FREE
#error "the bench link needs the pins of the serial line: README.md, Bench link, names them"
#elif LAMPWRIGHT_LIVE_BAUD < 57600
#error "the bench link needs 57,600 baud or more"
#elif LAMPWRIGHT_FRAME_BYTES > 65535
#error "the bench link carries frames of up to 65,535 bytes"
#elif LAMPWRIGHT_FITS_BOARD

#include "lampwright_serial.h"

/*
 * What goes over the line (docs/live.md); numbers low byte first, each CRC of all after the first
 * byte:
 *
 *   packet      0xA7 | length (2): 0 or a frame's | sequence (1) | frame | CRC (2)
 *   here I am   0x7A | 1 | sequence (1) | version (1) | flags (1) | frame bytes (2) | layout (2) |
 *               CRC (2)
 *   taken       0x7A | 2 | sequence (1) | CRC (2)
 */
#define PACKET 0xA7
#define ANSWER 0x7A
#define HERE 1
#define TAKEN 2
#define VERSION 1
#define FLAGS 0
#define CRC_START 0xFFFF

/* What came in. */
#define NOTHING 0
#define QUESTION 1
#define FRAME 2

/* For a question, once anything has come. */
#define LISTEN_MS 200UL
/* Within a packet, between bytes. */
#define GAP_MS 50UL
/* Of silence, after which nobody sends any more; a packet's own time on the line is none. */
#define SILENCE_MS (1000UL + (LAMPWRIGHT_FRAME_BYTES + 6UL) * 10000UL / LAMPWRIGHT_LIVE_BAUD)
/* After a try in vain the show goes on for so long: bytes of something else on the line must not
 * hold it up. */
#define REST_MS 500UL

#define TICKS(ms) (lampwright_ticks)(1ULL * LAMPWRIGHT_TICK_MILLIHERTZ * (ms) / 1000000)

/*
 * While a packet came, the lines were low for long enough. Of one whose sender does not wait for
 * the answer, three bytes came before at most: no more is kept for us. What sends by itself
 * (LAMPWRIGHT_CLOCK_WAITS) knows when its lines have rested.
 */
#define LINES_RESTED                                                                               \
  (!LAMPWRIGHT_CLOCK_WAITS &&                                                                      \
   (LAMPWRIGHT_FRAME_BYTES + 3UL) * (10000000UL / LAMPWRIGHT_LIVE_BAUD) >= LAMPWRIGHT_RESET_US)

#define NO_SEQUENCE 256

static lampwright_ticks heard; /* when the last packet had been dealt with */
static lampwright_ticks patience;
static lampwright_ticks rested_from;
static uint8_t resting;
static uint8_t linked;   /* a computer has asked */
static uint8_t sequence; /* of the packet that is being received */
static uint16_t shown;   /* sequence number of the last frame shown, or NO_SEQUENCE */
static uint16_t check;   /* CRC so far */

/* CRC-16/MCRF4XX: polynomial 0x8408 (reflected), a byte at a time. */
static uint16_t checked(uint16_t crc, uint8_t byte) {
  byte ^= (uint8_t)crc;
  byte ^= (uint8_t)(byte << 4);
  return (uint16_t)((crc >> 8 | (uint16_t)byte << 8) ^ (uint8_t)(byte >> 4) ^ (uint16_t)byte << 3);
}

static uint8_t is_over(lampwright_ticks since, lampwright_ticks ticks) {
  return (lampwright_ticks)(lampwright_clock_now() - since) >= ticks;
}

/* Waits for the next byte of a packet; 0 if the packet has to be given up. */
static uint8_t comes(void) {
  lampwright_ticks since;
  if (lampwright_serial_ready()) {
    return 1;
  }
  since = lampwright_clock_now();
  while (!lampwright_serial_ready()) {
    /* The clock once, then the line again: an IDE's clock takes as long as a byte. */
    lampwright_ticks now = lampwright_clock_now();
    if ((lampwright_ticks)(now - since) >= TICKS(GAP_MS) ||
        (lampwright_ticks)(now - heard) >= patience) {
      return 0;
    }
  }
  return 1;
}

/* Receives so many bytes; 0 if they are not all there and whole. */
static uint8_t receive(uint8_t *to, uint16_t count) {
  uint16_t crc = check;
  for (; count > 0; count--) {
    if (!comes() || !lampwright_serial_read(to)) {
      return 0;
    }
    crc = checked(crc, *to++);
  }
  check = crc;
  return 1;
}

/* Receives what follows the first byte of a packet. */
static uint8_t packet(void) {
  uint8_t two[2];
  uint16_t length;
  check = CRC_START;
  if (!receive(two, 2)) {
    return NOTHING;
  }
  length = (uint16_t)(two[0] | (uint16_t)two[1] << 8);
  /*
   * Until a computer has asked, the show's own player works on the frame: its bytes must stay.
   */
  if (length != 0 && (length != LAMPWRIGHT_FRAME_BYTES || !linked)) {
    return NOTHING;
  }
  /* With its own CRC behind it the CRC of whatever is whole is 0. */
  if (!receive(&sequence, 1) || !receive(lampwright_show_bytes, length) || !receive(two, 2) ||
      check != 0) {
    return NOTHING;
  }
  return length == 0 ? QUESTION : FRAME;
}

/* Looks for the next whole packet until its patience ends. */
static uint8_t next(void) {
  for (;;) {
    uint8_t byte = 0;
    uint8_t what;
    if (lampwright_serial_ready()) {
      (void)lampwright_serial_read(&byte); /* bytes that were lost before it don't matter here */
    } else if (is_over(heard, patience)) {
      return NOTHING;
    }
    what = byte == PACKET ? packet() : NOTHING;
    if (what != NOTHING) {
      return what;
    }
  }
}

static void say(uint8_t byte) {
  while (!lampwright_serial_room()) {
  }
  lampwright_serial_write(byte);
  check = checked(check, byte);
}

static void begin_answer(uint8_t kind) {
  say(ANSWER);
  check = CRC_START;
  say(kind);
}

static void end_answer(void) {
  uint16_t crc = check;
  say((uint8_t)crc);
  say((uint8_t)(crc >> 8));
}

static void here(void) {
  begin_answer(HERE);
  say(sequence);
  say(VERSION);
  say(FLAGS);
  say((uint8_t)LAMPWRIGHT_FRAME_BYTES);
  say((uint8_t)(LAMPWRIGHT_FRAME_BYTES >> 8));
  say((uint8_t)LAMPWRIGHT_LIVE_LAYOUT);
  say((uint8_t)(LAMPWRIGHT_LIVE_LAYOUT >> 8));
  end_answer();
}

/*
 * A sender that got no answer may send a frame again. The first two bytes of the answer need
 * nobody's help: they leave while the frame is on its way, and the rest once it is sent.
 */
static void taken(void) {
  begin_answer(TAKEN);
  if (shown != sequence) {
    shown = sequence;
#if LINES_RESTED
    lampwright_show_send_rested();
#else
    lampwright_show_send();
#endif
  }
  say(sequence);
  end_answer();
}

void lampwright_live_begin(void) { lampwright_serial_begin(); }

/* Whether bytes are to be left alone, as the last ones were no packet's. */
static uint8_t rests(void) {
  uint8_t byte;
  if (resting && is_over(rested_from, TICKS(REST_MS))) {
    resting = 0;
  }
  while (resting && lampwright_serial_ready()) {
    (void)lampwright_serial_read(&byte);
  }
  return resting;
}

static void wait_for(lampwright_ticks ticks) {
  patience = ticks;
  heard = lampwright_clock_now();
}

uint8_t lampwright_live(void) {
  uint8_t what;
  if (rests() || !lampwright_serial_ready()) {
    return 0;
  }
  linked = 0;
  wait_for(TICKS(LISTEN_MS));
  for (;;) {
    what = next();
    if (what == QUESTION) {
      linked = 1;
      shown = NO_SEQUENCE;
      here();
    } else if (what == FRAME) {
      taken();
    } else if (!linked) {
      resting = 1;
      rested_from = lampwright_clock_now();
      return 0;
    } else {
#if LAMPWRIGHT_LIVE_THEN_DARK
      shown = NO_SEQUENCE;
      memset(lampwright_show_bytes, 0, LAMPWRIGHT_FRAME_BYTES);
      lampwright_show_send();
#else
      return 1;
#endif
    }
    wait_for(TICKS(SILENCE_MS));
  }
}

#endif

#endif
