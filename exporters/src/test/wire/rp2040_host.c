/*
 * The RP2040's wire driver, outputs and inputs on this machine: its registers are words of memory
 * that rp2040_host.h looks up by their address. What must be where is from the maker's datasheet
 * and SVD file, written down here a second time.
 */
#include <stdio.h>
#include <string.h>

#include "lampwright_board.h"
#include "lampwright_clock.h"
#include "lampwright_inputs.h"
#include "lampwright_outputs.h"
#include "lampwright_situations.h"
#include "lampwright_wire.h"

#define PLACES 256
static uint32_t addresses[PLACES];
static volatile uint32_t words[PLACES];
static int used;
static int busy_for; /* how often a channel still says that it is busy */
static uint32_t busy_channel;

volatile uint32_t *host_register(uint32_t address) {
  int i;
  for (i = 0; i < used && addresses[i] != address; i++) {
  }
  if (i == used) {
    addresses[used++] = address;
  }
  if (address == busy_channel) {
    words[i] = busy_for > 0 ? words[i] | 1UL << 24 : words[i] & ~(1UL << 24);
    busy_for -= busy_for > 0;
  }
  return &words[i];
}

static uint32_t at(uint32_t address) { return *host_register(address); }

static lampwright_ticks now = 1000;
static lampwright_ticks waited[32];
static int waits;
void lampwright_clock_begin(void) {}
lampwright_ticks lampwright_clock_now(void) { return now; }
void lampwright_clock_wait(lampwright_ticks until) { waited[waits++] = until; }

static lampwright_board board = {
    3,
    3,
    5,
    4000,
    254,
    {{7, 10, 10, 11, 11, 0, 5, 300}, {28, 8, 7, 7, 15, 0, 3, 400}, {3, 1, 16, 2, 3, 0, 0, 500}},
    {4, 5, 22},
    3,
    {0, 0, 0},
    {{9, 0}, {12, 1}, {13, 2}}};
const lampwright_board *const lampwright_fitted = &board;

static uint16_t readings[3];
void lampwright_situations_input(const lampwright_player *player, uint8_t input, uint16_t reading) {
  (void)player;
  readings[input] = reading;
}

static int faults;

static void expect(int holds, const char *what) {
  if (!holds) {
    printf("not so: %s\n", what);
    faults++;
  }
}

int main(void) {
  static const uint8_t frame[8] = {1, 2, 3, 4, 5, 6, 7, 8};
  static const uint8_t duties[3] = {255, 1, 128};
  uint32_t first;
  uint32_t second;
  *host_register(0x4000C008) = 0xFFFFFFFF; /* out of reset at once */

  lampwright_wire_begin();
  expect(at(0x4000F000) == (1UL << 2 | 1UL << 5 | 1UL << 8 | 1UL << 10 | 1UL << 11), "resets");
  /* out x,1 side 0 [10]; jmp !x,3 side 1 [9]; jmp 0 side 1 [9]; nop side 0 [10] */
  expect(at(0x50200048) == 0x6A21, "first instruction");
  expect(at(0x5020004C) == 0x1923, "second instruction");
  expect(at(0x50200050) == 0x1900, "third instruction");
  expect(at(0x50200054) == 0xAA42, "fourth instruction");
  /* The second machine's program begins at 8, its jumps go there; a step of 16 is a delay of 15. */
  expect(at(0x50200048 + 4 * 8) == 0x6E21, "second machine's first instruction");
  expect(at(0x50200048 + 4 * 9) == (0x1700 | 0x20 | 11), "second machine's jump");
  expect(at(0x50200048 + 4 * 18) == (0x1F00 | 16), "a step of 16");
  expect(at(0x502000C8) == 5UL << 16, "divider");
  expect(at(0x502000CC) == 3UL << 12, "wrap");
  expect(at(0x502000CC + 0x18) == (11UL << 12 | 8UL << 7), "second machine's wrap");
  expect((at(0x502000DC) >> 10 & 31) == 7 && (at(0x502000DC + 0x18) >> 10 & 31) == 28, "side pins");
  expect(at(0x40014004 + 8 * 7) == 6 && at(0x40014004 + 8 * 28) == 6, "pins belong to PIO0");
  /* What was on the lines may have been no reset: every chain's own time is waited for. */
  expect(waits == 3 && waited[0] == 1300 && waited[1] == 1400 && waited[2] == 1500, "first waits");

  expect(lampwright_wire_bytes(0) == 5 && lampwright_wire_bytes(1) == 3, "bytes");
  expect(lampwright_wire_bytes(3) == 0 && lampwright_wire_bytes(255) == 0, "no such chain");
  now = 2000;
  lampwright_wire_chain(0, frame);
  lampwright_wire_chain(1, frame + 5);
  first = at(0x50000000);
  second = at(0x50000040);
  expect(second == first + 5, "the second chain's copy is behind the first's");
  expect(at(0x50000004) == 0x50200010 && at(0x50000044) == 0x50200014, "FIFOs");
  expect(at(0x50000008) == 5 && at(0x50000048) == 3, "counts");
  expect((at(0x5000000C) >> 15 & 63) == 0 && (at(0x5000004C) >> 15 & 63) == 1, "requests");
  expect((at(0x5000000C) >> 11 & 15) == 0 && (at(0x5000004C) >> 11 & 15) == 1, "no chaining");
  expect((at(0x5000000C) & 0x3F) == 0x11, "bytes, addresses that grow, enabled");
  lampwright_wire_chain(2, frame);
  lampwright_wire_chain(7, frame);
  expect(at(0x50000088) == 0 && at(0x500001C8) == 0, "an empty and a missing chain send nothing");

  /* Rest: until the channel is no longer busy, then each chain's own time. */
  waits = 0;
  busy_channel = 0x5000000C;
  busy_for = 5;
  lampwright_wire_rest();
  expect(busy_for == 0, "the channel is waited for");
  expect(waits == 3 && waited[0] == 2300 && waited[1] == 2400 && waited[2] == 1500, "rests");

  lampwright_outputs_begin();
  expect(at(0x40050000 + 0x14 * 2 + 4) == 4000 && at(0x40050000 + 0x14 * 2 + 16) == 254, "PWM");
  expect(at(0x40014004 + 8 * 22) == 4, "GP22 belongs to PWM");
  lampwright_outputs_set(duties);
  /* GP4 and GP5 are channels A and B of slice 2, GP22 is A of slice 3. */
  expect(at(0x40050000 + 0x14 * 2 + 12) == (255 | 1UL << 16), "both duties of a slice");
  expect(at(0x40050000 + 0x14 * 3 + 12) == 128, "duty of another");

  waits = 0;
  lampwright_inputs_begin();
  /* The last machine of PIO1: wait 0 pin 0; mov x,~null; wait 1 pin 0; jmp x--,29 [1]; jmp 24;
     jmp pin,27 [2]; mov isr,~x; push noblock */
  expect(at(0x50300048 + 4 * 24) == 0x2020, "waits for low");
  expect(at(0x50300048 + 4 * 25) == 0xA02B, "all ones");
  expect(at(0x50300048 + 4 * 26) == 0x20A0, "waits for high");
  expect(at(0x50300048 + 4 * 27) == (0x0140 | 29), "counts");
  expect(at(0x50300048 + 4 * 28) == 24, "too long");
  expect(at(0x50300048 + 4 * 29) == (0x02C0 | 27), "still high");
  expect(at(0x50300048 + 4 * 30) == 0xA0C9, "the count");
  expect(at(0x50300048 + 4 * 31) == 0x8000, "hands it on");
  expect(at(0x503000C8 + 0x18 * 3) == 5UL << 16, "its divider");
  expect(at(0x503000CC + 0x18 * 3) == (9UL << 24 | 31UL << 12 | 24UL << 7), "its pin and wrap");
  expect(at(0x503000D0 + 0x18 * 3) == 1UL << 31, "one FIFO");
  expect(at(0x503000DC + 0x18 * 3) == 9UL << 15, "the pin that it waits for");
  expect(at(0x5030212C) == 8 && at(0xE000E100) == 1UL << 9, "its request ends a sleep");
  /* Output off, input on, Schmitt trigger; pulled down, down and up. */
  expect(at(0x4001C004 + 4 * 9) == 0xC6 && at(0x4001C004 + 4 * 12) == 0xC6, "pads");
  expect(at(0x4001C004 + 4 * 13) == 0xCA, "pad of a switch to ground");
  expect(at(0x40014004 + 8 * 9) == 31 && at(0x40014004 + 8 * 13) == 31, "nobody drives them");
  expect(waits == 1 && waited[0] == 27000, "waits 25 ms");

  *host_register(0xD0000004) = 1UL << 12;
  *host_register(0x50300004) = 1UL << 11; /* the FIFO is empty */
  lampwright_inputs_read(0);
  expect(readings[0] == 0 && readings[1] == 1 && readings[2] == 0, "levels");
  *host_register(0x50300004) = 0;
  *host_register(0x5030002C) = 7501; /* counts of 0.2 us, one of them before the end is seen */
  *host_register(0xD0000004) = 1UL << 13;
  lampwright_inputs_read(0);
  expect(readings[0] == 1500 && readings[1] == 0 && readings[2] == 1, "a width");
  expect(at(0xE000E280) == (1UL << 7 | 1UL << 9), "requests are answered");
  *host_register(0x5030002C) = 0xFFFFFFFF;
  lampwright_inputs_read(0);
  expect(readings[0] == 1500, "no pulse of a receiver");
  printf("%d faults\n", faults);
  return faults != 0;
}
