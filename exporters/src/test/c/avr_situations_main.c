/*
 * Plays situations on a simulated AVR (avr_situations.c), which puts packed data into program memory and readings
 * into `exchange` at every frame.
 */
#include <avr/io.h>
#include <stdint.h>
#include <string.h>

#if LAMPWRIGHT_CEILING
#include "lampwright_ceiling.h"
#endif
#include "lampwright_situations.h"

#define READINGS 16

extern void lampwright_avr_lamp(void);
extern uint8_t lampwright_situations_room[], lampwright_situations_room_end[];

static const uint8_t packed[PACKED_BYTES] LAMPWRIGHT_DATA = {1};
static lampwright_player player;
static uint8_t buffer[FRAME_BYTES];

/* The simulator knows this order. */
static volatile struct {
  uint16_t packed;
  uint16_t buffer;
  uint16_t player;
  uint16_t player_bytes;
  uint16_t room;
  uint16_t room_end;
  uint16_t size;
  uint16_t frame_bytes;
  uint16_t frame_code; /* in words */
  uint16_t lamp_code;
  uint16_t factor; /* of the frame as it is sent, in 256ths */
  uint8_t status;
  uint8_t readings;
  struct {
    uint8_t input;
    uint16_t reading;
  } queue[READINGS];
} exchange;

int main(void) {
  exchange.packed = (uint16_t)(uintptr_t)packed;
  exchange.buffer = (uint16_t)(uintptr_t)buffer;
  exchange.player = (uint16_t)(uintptr_t)&player;
  exchange.player_bytes = sizeof player;
  exchange.frame_code = (uint16_t)(uintptr_t)lampwright_player_frame;
  exchange.lamp_code = (uint16_t)(uintptr_t)lampwright_avr_lamp;
  exchange.room = (uint16_t)(uintptr_t)lampwright_situations_room;
  exchange.room_end = (uint16_t)(uintptr_t)lampwright_situations_room_end;
  memset(buffer, 0x55, sizeof buffer);
  GPIOR1 = (uint8_t)(uintptr_t)&exchange;
  GPIOR2 = (uint8_t)((uintptr_t)&exchange >> 8);
  GPIOR0 = 1; /* asks for data */
  exchange.status =
      lampwright_player_open(&player, packed, exchange.size, buffer, exchange.frame_bytes);
  if (exchange.status == LAMPWRIGHT_OK) {
    exchange.status = lampwright_situations_open(&player);
  }
#if LAMPWRIGHT_CEILING
  if (exchange.status == LAMPWRIGHT_OK) {
    exchange.status = lampwright_ceiling_open(&player);
  }
#endif
  for (;;) {
    uint8_t i;
    GPIOR0 = 2; /* asks for readings */
    for (i = 0; i < exchange.readings; i++) {
      lampwright_situations_input(&player, exchange.queue[i].input, exchange.queue[i].reading);
    }
    if (exchange.status == LAMPWRIGHT_OK) {
      exchange.status = lampwright_situations_frame(&player);
    }
    exchange.factor = 256;
#if LAMPWRIGHT_CEILING
    GPIOR0 = 4; /* looks at the ceiling */
    exchange.factor = lampwright_ceiling(&player);
#endif
    GPIOR0 = 3; /* has the frame */
  }
}
