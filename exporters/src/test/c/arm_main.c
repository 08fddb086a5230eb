/* Plays packed data on a simulated Cortex-M3 and prints a CRC of all frames by semihosting. */
#include <stdint.h>

#include "lampwright_player.h"

extern const uint8_t packed_data[];
extern const uint32_t packed_size;
extern const uint16_t packed_frames;
extern uint8_t stack_top[];

static lampwright_player player;
static uint8_t buffer[FRAME_BYTES];

static int semihost(int operation, const void *argument) {
  register int r0 __asm__("r0") = operation;
  register const void *r1 __asm__("r1") = argument;
  __asm__ volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
  return r0;
}

static void print_hex(uint32_t value) {
  char text[10];
  int i;
  for (i = 0; i < 8; i++) {
    text[i] = "0123456789ABCDEF"[value >> (28 - 4 * i) & 15];
  }
  text[8] = '\n';
  text[9] = 0;
  semihost(4, text);
}

static void start(void) {
  uint32_t crc = 0xFFFFFFFFu;
  uint32_t frame;
  if (lampwright_player_open(&player, packed_data, packed_size, buffer, sizeof buffer) ==
          LAMPWRIGHT_OK &&
      lampwright_player_scene(&player, 0) == LAMPWRIGHT_OK) {
    for (frame = 0; frame < packed_frames; frame++) {
      unsigned i;
      lampwright_player_frame(&player);
      for (i = 0; i < sizeof buffer; i++) {
        int k;
        crc ^= buffer[i];
        for (k = 0; k < 8; k++) {
          crc = crc & 1 ? crc >> 1 ^ 0xEDB88320u : crc >> 1;
        }
      }
    }
  }
  print_hex(~crc);
  semihost(0x18, (const void *)0x20026);
  for (;;) {
  }
}

typedef struct {
  uint8_t *stack;
  void (*reset)(void);
} vector_table;

__attribute__((section(".vectors"), used)) static const vector_table vectors = {stack_top, start};
