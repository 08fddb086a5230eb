/*
 * Runs a firmware under simavr over and over, each time with other damage to its packed data and the
 * checksum made right again. No frame may change any byte of RAM but those of the frame, the player
 * and the stack, every frame has to end, and after a fault all has to be dark.
 * Without rounds it is run once as it is.
 * usage: avr_damage FIRMWARE DATA SIZE BUFFER FRAME_BYTES PLAYER PLAYER_BYTES ROUNDS [SEED]
 */
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include <simavr/sim_io.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "damage.h"

#define GPIOR0 0x3E
#define SPL 0x5D
#define SREG 0x5F
#define STACK_BYTES 160
#define FRAME_CYCLES 40000000u
#define STEP_CYCLES 800000000u /* between frames, where lamps are started */

static uint32_t buffer, frame_bytes, player, player_bytes;
static uint8_t before[0x900];
static int ended, faulted, wrong, in_frame;
static avr_cycle_count_t started;

static void marked(avr_t *avr, avr_io_addr_t addr, uint8_t mark, void *param) {
  uint32_t at;
  uint32_t stack = (uint32_t)(avr->data[SPL] | avr->data[SPL + 1] << 8);
  (void)param;
  avr->data[addr] = mark;
  if (mark == 1) {
    memcpy(before, avr->data, avr->ramend + 1u);
    started = avr->cycle;
    in_frame = 1;
  } else if (mark == 2) {
    in_frame = 0;
    started = avr->cycle;
    for (at = 0x20; at <= avr->ramend; at++) {
      int allowed = (at >= buffer && at < buffer + frame_bytes) ||
                    (at >= player && at < player + player_bytes) ||
                    (at <= stack && at + STACK_BYTES > stack) || at == GPIOR0 || at == SREG;
      if (!allowed && before[at] != avr->data[at]) {
        printf("byte %04x of RAM changed\n", at);
        wrong = 1;
      }
    }
  } else if (mark == 3) {
    in_frame = 0;
    faulted = 1;
    ended = 1;
    for (at = 0; at < frame_bytes; at++) {
      if (avr->data[buffer + at]) {
        printf("not dark after a fault\n");
        wrong = 1;
        break;
      }
    }
  } else {
    ended = 1;
  }
}

int main(int argc, char **argv) {
  elf_firmware_t firmware = {0};
  uint32_t data, size, at;
  int rounds, round, faults = 0, played = 0;
  uint8_t *good;
  avr_t *avr;
  if (argc < 9 || elf_read_firmware(argv[1], &firmware) != 0) {
    return 2;
  }
  data = (uint32_t)strtoul(argv[2], 0, 0);
  size = (uint32_t)strtoul(argv[3], 0, 0);
  buffer = (uint32_t)strtoul(argv[4], 0, 0);
  frame_bytes = (uint32_t)strtoul(argv[5], 0, 0);
  player = (uint32_t)strtoul(argv[6], 0, 0);
  player_bytes = (uint32_t)strtoul(argv[7], 0, 0);
  rounds = atoi(argv[8]);
  if (argc > 9) {
    seed = (uint32_t)strtoul(argv[9], 0, 0);
  }
  strcpy(firmware.mmcu, "atmega328p");
  firmware.frequency = 16000000;
  avr = avr_make_mcu_by_name(firmware.mmcu);
  avr_init(avr);
  avr_load_firmware(avr, &firmware);
  avr_register_io_write(avr, GPIOR0, marked, 0);
  good = malloc(size);
  memcpy(good, avr->flash + data, size);
  for (round = 0; (round == 0 || round < rounds) && !wrong; round++) {
    uint8_t *bad = avr->flash + data;
    int hits = rounds == 0 ? 0 : 1 + (int)(random32() % 6);
    uint32_t sum;
    memcpy(bad, good, size);
    while (hits--) {
      /* The sizes stay: what is wrong with them is found when the data is opened. */
      bad[14 + random32() % (size - 14)] = (uint8_t)random32();
    }
    sum = crc(bad + 6, size - 6);
    for (at = 0; at < 4; at++) {
      bad[2 + at] = (uint8_t)(sum >> (8 * at));
    }
    avr_reset(avr);
    memset(avr->data + 0x100, 0, avr->ramend + 1u - 0x100);
    ended = faulted = in_frame = 0;
    started = avr->cycle;
    while (!ended && !wrong) {
      int state = avr_run(avr);
      if (state == cpu_Done || state == cpu_Crashed ||
          avr->cycle - started > (in_frame ? FRAME_CYCLES : STEP_CYCLES)) {
        printf("round %d: %s\n", round, in_frame ? "a frame does not end" : "does not end");
        wrong = 1;
      }
    }
    faults += faulted;
    played += !faulted;
  }
  printf("%d rounds: %d faults, %d played, %s\n", round, faults, played, wrong ? "WRONG" : "fine");
  return wrong;
}
