/*
 * Plays packed data by its situations on simulated AVRs: what situations_check.c does on this machine, with the
 * same standard input and output. Rounds of damage: no frame may change any byte of RAM but those of the frame, the
 * player, the room of situations and the stack, every frame has to end, and after a fault all has to be dark.
 * usage: avr_situations FIRMWARE... for times of 1, 2 and 4 bytes; one firmware plays all
 */
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include <simavr/sim_io.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "damage.h"

#define GPIOR0 0x3E
#define GPIOR1 0x4A
#define GPIOR2 0x4B
#define SPL 0x5D
#define SREG 0x5F
#define RAM_END 0x8FF
/* What is simulated: the simulator gives up at a read past its RAM, which a controller does not mind. */
#define READ_END 0xFFF
#define STACK_BYTES 120
#define FRAME_CYCLES 80000000u
#define MOST_READINGS 16
enum { PACKED, BUFFER, PLAYER, PLAYER_BYTES, ROOM, ROOM_END, SIZE, FRAME_BYTES, FRAME_CODE, LAMP_CODE, FACTOR, WORDS };
#define STATUS (2 * WORDS)
#define READINGS (STATUS + 1)
#define QUEUE (STATUS + 2)

typedef struct {
  avr_t *avr;
  uint32_t exchange;
  int mark;
  uint32_t least_stack;
  avr_cycle_count_t limits_from;
} machine;

static avr_cycle_count_t quiet, busy, longest_open, limiting;
static uint32_t deepest;

static void marked(avr_t *avr, avr_io_addr_t addr, uint8_t mark, void *param) {
  machine *m = param;
  avr->data[addr] = mark;
  if (mark == 1) {
    m->exchange = avr->data[GPIOR1] | (uint32_t)avr->data[GPIOR2] << 8;
  }
  if (mark == 4) {
    m->limits_from = avr->cycle;
    return;
  }
  if (mark == 3 && m->limits_from != 0 && avr->cycle - m->limits_from > limiting) {
    limiting = avr->cycle - m->limits_from;
  }
  m->mark = mark;
}

static uint32_t word(machine *m, int n) {
  const uint8_t *at = m->avr->data + m->exchange + 2 * n;
  return at[0] | (uint32_t)at[1] << 8;
}

static void set_word(machine *m, int n, uint32_t value) {
  uint8_t *at = m->avr->data + m->exchange + 2 * n;
  at[0] = (uint8_t)value;
  at[1] = (uint8_t)(value >> 8);
}

/* Runs to the next mark. */
static void go(machine *m) {
  avr_cycle_count_t from = m->avr->cycle;
  uint32_t lamp = 2 * word(m, LAMP_CODE), frame = 2 * word(m, FRAME_CODE);
  int starts = 0;
  m->mark = 0;
  while (!m->mark) {
    int state = avr_run(m->avr);
    if (m->avr->pc == lamp) {
      starts = 1;
    } else if (m->avr->pc == frame) {
      /* All before is readings and situations, all behind is decoding. */
      avr_cycle_count_t *most = starts ? &busy : &quiet;
      if (m->avr->cycle - from > *most) {
        *most = m->avr->cycle - from;
      }
    }
    uint32_t stack = (uint32_t)(m->avr->data[SPL] | m->avr->data[SPL + 1] << 8);
    if (stack > 0x100 && stack < m->least_stack) {
      m->least_stack = stack;
    }
    if (state == cpu_Done || state == cpu_Crashed || m->avr->cycle - from > FRAME_CYCLES) {
      fprintf(stderr, "does not end\n");
      exit(6);
    }
  }
}

static void load(machine *m, const char *elf) {
  elf_firmware_t firmware;
  memset(&firmware, 0, sizeof firmware);
  if (elf_read_firmware(elf, &firmware) != 0) {
    exit(2);
  }
  strcpy(firmware.mmcu, "atmega328p");
  firmware.frequency = 16000000;
  m->avr = avr_make_mcu_by_name(firmware.mmcu);
  m->avr->ramend = READ_END;
  avr_init(m->avr);
  avr_load_firmware(m->avr, &firmware);
  avr_register_io_write(m->avr, GPIOR0, marked, m);
  m->least_stack = 0xFFFF;
}

/* Starts over with data, up to where readings are asked for. */
static void begin(machine *m, const uint8_t *data, uint32_t size, uint32_t frame_bytes) {
  avr_cycle_count_t from;
  avr_reset(m->avr);
  memset(m->avr->data + 0x100, 0, m->avr->ramend + 1u - 0x100);
  go(m);
  memcpy(m->avr->flash + word(m, PACKED), data, size);
  set_word(m, SIZE, size);
  set_word(m, FRAME_BYTES, frame_bytes);
  from = m->avr->cycle;
  go(m);
  if (m->avr->cycle - from > longest_open) {
    longest_open = m->avr->cycle - from;
  }
}

static void queue(machine *m, int n, uint32_t input, uint32_t reading) {
  uint8_t *at = m->avr->data + m->exchange + QUEUE + 3 * n;
  at[0] = (uint8_t)input;
  at[1] = (uint8_t)reading;
  at[2] = (uint8_t)(reading >> 8);
}

/* Plays a frame; its status. */
static int frame(machine *m, int readings) {
  static uint8_t before[0x1000];
  avr_t *avr = m->avr;
  uint32_t at, stack;
  avr->data[m->exchange + READINGS] = (uint8_t)readings;
  memcpy(before, avr->data, avr->ramend + 1u);
  go(m);
  stack = (uint32_t)(avr->data[SPL] | avr->data[SPL + 1] << 8);
  for (at = 0x20; at <= avr->ramend; at++) {
    int allowed = (at >= word(m, BUFFER) && at < word(m, BUFFER) + word(m, FRAME_BYTES)) ||
                  (at >= word(m, PLAYER) && at < word(m, PLAYER) + word(m, PLAYER_BYTES)) ||
                  (at >= word(m, ROOM) && at < word(m, ROOM_END)) ||
                  (at <= stack && at + STACK_BYTES > stack) || at == m->exchange + STATUS ||
                  at == m->exchange + 2 * FACTOR || at == m->exchange + 2 * FACTOR + 1 ||
                  at == GPIOR0 || at == SREG;
    if (!allowed && before[at] != avr->data[at]) {
      fprintf(stderr, "byte %04x of RAM changed\n", at);
      exit(7);
    }
  }
  at = avr->data[m->exchange + STATUS];
  go(m); /* to where readings are asked for */
  return (int)at;
}

static int is_dark(machine *m) {
  uint32_t i;
  for (i = 0; i < word(m, FRAME_BYTES); i++) {
    if (m->avr->data[word(m, BUFFER) + i]) {
      return 0;
    }
  }
  return 1;
}

static int faults, played;

static void damaged(machine *m, const uint8_t *data, size_t size, size_t show, size_t frame_bytes) {
  uint8_t *bad = malloc(size);
  int i, status, hits = 1 + (int)(random32() % 4);
  uint32_t c;
  memcpy(bad, data, size);
  while (hits--) {
    uint8_t *at = bad + show + 1 + random32() % (size - show - 1);
    *at = random32() % 2 ? (uint8_t)random32() : (uint8_t)(*at ^ 1u << random32() % 8);
  }
  c = crc(bad + 6, size - 6);
  for (i = 0; i < 4; i++) {
    bad[2 + i] = (uint8_t)(c >> (8 * i));
  }
  begin(m, bad, (uint32_t)size, (uint32_t)frame_bytes);
  status = m->avr->data[m->exchange + STATUS];
  for (i = 0; i < 40 && status == 0; i++) {
    int k;
    for (k = 0; k < 4; k++) {
      queue(m, k, random32() % 6, random32() % 4 ? 1300 + random32() % 400 : random32() % 2);
    }
    status = frame(m, 4);
  }
  if (status != 0) {
    faults++;
    if (!is_dark(m)) {
      exit(4);
    }
    (void)frame(m, 0);
    if (!is_dark(m)) {
      exit(5);
    }
  } else {
    played++;
  }
  free(bad);
}

static uint32_t number(int bytes) {
  uint32_t n = 0;
  int i;
  for (i = 0; i < bytes; i++) {
    int c = getchar();
    if (c == EOF) {
      if (i == 0 && bytes == 4) {
        fprintf(stderr, "%d faults, %d played; cycles: quiet %llu, busy %llu, open %llu, ceiling %llu; stack %u\n",
                faults, played, (unsigned long long)quiet, (unsigned long long)busy,
                (unsigned long long)longest_open, (unsigned long long)limiting, deepest);
        exit(0);
      }
      exit(2);
    }
    n |= (uint32_t)c << (8 * i);
  }
  return n;
}

int main(int argc, char **argv) {
  static machine machines[3];
  static uint8_t data[1 << 16];
  FILE *out = fdopen(dup(1), "wb");
  int i;
  dup2(2, 1); /* for what libsimavr has to say */
  for (i = 1; i < argc && i <= 3; i++) {
    load(&machines[i - 1], argv[i]);
  }
  for (;;) {
    machine *m;
    size_t size = number(4);
    size_t show, frame_bytes;
    uint32_t f, frames, rounds;
    int status;
    if (fread(data, 1, size, stdin) != size) {
      return 2;
    }
    frame_bytes = number(2);
    frames = number(4);
    rounds = number(2);
    /* The show follows the scenes' tables, which are of 6 bytes and a place for each lamp. */
    show = (data[14] | (size_t)data[15] << 8) + data[10] * (size_t)(data[7] & 1 ? 4 : 3) +
           data[11] * (6u + 2u * data[10]);
    m = &machines[argc <= 2 ? 0 : data[show] / 2];
    begin(m, data, (uint32_t)size, (uint32_t)frame_bytes);
    status = m->avr->data[m->exchange + STATUS];
    for (f = 0; f < frames; f++) {
      uint32_t n = number(2), r;
      if (n > MOST_READINGS) {
        return 2;
      }
      for (r = 0; r < n; r++) {
        uint32_t input = number(1);
        queue(m, (int)r, input, number(2));
      }
      status = frame(m, (int)n);
      putc(status, out);
      for (size_t b = 0; b < frame_bytes; b++) {
        putc(m->avr->data[word(m, BUFFER) + b] * word(m, FACTOR) >> 8, out);
      }
    }
    for (f = 0; f < rounds; f++) {
      damaged(m, data, size, show, frame_bytes);
    }
    if (RAM_END - m->least_stack > deepest) {
      deepest = RAM_END - m->least_stack;
    }
  }
}
