/*
 * Runs a firmware under simavr, compares its frames with a frame table and counts cycles.
 * usage: avr_count FIRMWARE TABLE FRAME_BYTES [CONTROLLER [STEP]]
 * With a step, the firmware shows every so many frames.
 */
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include <simavr/sim_io.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static avr_io_addr_t gpior0 = 0x3E, gpior1 = 0x4A, gpior2 = 0x4B;

typedef struct {
  avr_t *avr;
  const uint8_t *table;
  size_t frames;
  size_t frame_bytes;
  size_t step;
  size_t frame;
  avr_cycle_count_t start, open, total, worst;
  size_t worst_frame;
  size_t wrong;
  uint16_t least_stack;
  int ended;
} run;

static void marked(avr_t *avr, avr_io_addr_t addr, uint8_t mark, void *param) {
  run *r = param;
  avr->data[addr] = mark;
  if (mark == 1) {
    if (r->frame == 0) {
      r->open = avr->cycle;
    }
    r->start = avr->cycle;
  } else if (mark == 2) {
    avr_cycle_count_t cycles = avr->cycle - r->start;
    size_t at = avr->data[gpior1] | avr->data[gpior2] << 8;
    size_t want = r->frame * r->step % r->frames * r->frame_bytes;
    if (memcmp(avr->data + at, r->table + want, r->frame_bytes) != 0) {
      r->wrong++;
    }
    r->total += cycles;
    if (cycles > r->worst) {
      r->worst = cycles;
      r->worst_frame = r->frame;
    }
    r->frame++;
  } else {
    if (mark == 3) {
      r->wrong++;
    }
    r->ended = 1;
  }
}

int main(int argc, char **argv) {
  static uint8_t table[1 << 24];
  elf_firmware_t firmware = {0};
  run r = {0};
  FILE *f;
  if (argc < 4 || elf_read_firmware(argv[1], &firmware) != 0 || !(f = fopen(argv[2], "rb"))) {
    return 2;
  }
  r.frame_bytes = (size_t)atoi(argv[3]);
  r.frames = fread(table, 1, sizeof table, f) / r.frame_bytes;
  fclose(f);
  r.table = table;
  r.step = argc > 5 ? (size_t)atoi(argv[5]) : 1;
  if (argc > 4 && strcmp(argv[4], "attiny85") == 0) {
    gpior0 = 0x31;
    gpior1 = 0x32;
    gpior2 = 0x33;
  }
  strcpy(firmware.mmcu, argc > 4 ? argv[4] : "atmega328p");
  firmware.frequency = 16000000;
  r.avr = avr_make_mcu_by_name(firmware.mmcu);
  avr_init(r.avr);
  avr_load_firmware(r.avr, &firmware);
  r.least_stack = 0xFFFF;
  avr_register_io_write(r.avr, gpior0, marked, &r);
  while (!r.ended) {
    int state = avr_run(r.avr);
    uint16_t sp = (uint16_t)(r.avr->data[0x5D] | r.avr->data[0x5E] << 8);
    if (sp > 0x100 && sp < r.least_stack) {
      r.least_stack = sp;
    }
    if (state == cpu_Done || state == cpu_Crashed) {
      printf("crashed at frame %zu\n", r.frame);
      return 1;
    }
  }
  printf("%zu frames, %zu wrong, open %llu cycles, a byte %.1f average %.1f worst (frame %zu), stack %u\n",
         r.frame, r.wrong, (unsigned long long)r.open,
         (double)r.total / (double)r.frame / (double)r.frame_bytes,
         (double)r.worst / (double)r.frame_bytes, r.worst_frame, r.avr->ramend - r.least_stack);
  return r.wrong != 0;
}
