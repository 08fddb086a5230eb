/*
 * The program of the UF2 files that Lampwright writes without a compiler: plays the scene that the
 * table behind it names, or the situations. docs/formats.md describes the table, Uf2Table.java
 * writes it.
 */
#include <stddef.h>

#include "lampwright_board.h"
#include "lampwright_inputs.h"
#include "lampwright_react.h"
#include "lampwright_show.h"

#define TABLE_AT 0x10008000UL
#define FLASH_END 0x11000000UL
#define MAGIC 0x3154574CUL /* "LWT1" */
#define VERSION 2
#define SITUATIONS 0xFFFF /* in place of a scene */
#define PINS 30
#define MOST_STEPS 16

typedef struct {
  uint32_t magic;
  uint32_t crc; /* of all that follows in the table */
  uint16_t version;
  uint16_t scene;
  uint32_t packed_bytes; /* right behind the table */
  uint32_t ticks;        /* from frame to frame, us */
  uint16_t part;         /* and part / (part + missing) of one */
  uint16_t missing;
  uint32_t frame_bytes;
  lampwright_board board;
} image_table;

static const image_table *const table = (const image_table *)TABLE_AT;

const lampwright_board *const lampwright_fitted = &((const image_table *)TABLE_AT)->board;

static uint32_t crc_of(const uint8_t *bytes, uint32_t count) {
  uint32_t crc = 0xFFFFFFFFUL;
  while (count-- > 0) {
    uint8_t bit;
    crc ^= *bytes++;
    for (bit = 0; bit < 8; bit++) {
      crc = crc & 1 ? crc >> 1 ^ 0xEDB88320UL : crc >> 1;
    }
  }
  return ~crc;
}

static uint8_t is_step(uint8_t steps) { return steps >= 1 && steps <= MOST_STEPS; }

/* The bytes of the frame that the board's chains and outputs take; 0 if one can't be driven. */
static uint32_t bytes_fitted(const lampwright_board *board) {
  uint32_t bytes = board->outputs;
  uint8_t i;
  if (board->chains > LAMPWRIGHT_BOARD_CHAINS || board->outputs > LAMPWRIGHT_BOARD_OUTPUTS) {
    return 0;
  }
  for (i = 0; i < board->chains; i++) {
    const lampwright_board_chain *chain = &board->chain[i];
    if (chain->pin >= PINS || !is_step(chain->high) || !is_step(chain->high_1) ||
        !is_step(chain->low_0) || !is_step(chain->low)) {
      return 0;
    }
    bytes += chain->bytes;
  }
  for (i = 0; i < board->outputs; i++) {
    if (board->output_pin[i] >= PINS) {
      return 0;
    }
  }
  return bytes;
}

/* Whether the board's inputs can be read beside its chains. */
static uint8_t are_inputs_fitted(const lampwright_board *board) {
  uint8_t machines = board->chains;
  uint8_t i;
  if (board->inputs > LAMPWRIGHT_BOARD_INPUTS) {
    return 0;
  }
  for (i = 0; i < board->inputs; i++) {
    const lampwright_board_input *input = &board->input[i];
    if (input->pin >= PINS || input->kind > LAMPWRIGHT_BOARD_SWITCH_TO_GROUND) {
      return 0;
    }
    if (input->kind == LAMPWRIGHT_BOARD_CHANNEL) {
      machines++;
    }
  }
  return machines <= LAMPWRIGHT_BOARD_MACHINES;
}

static uint8_t is_whole(void) {
  uint32_t checked = sizeof *table - offsetof(image_table, version);
  return table->magic == MAGIC && table->crc == crc_of((const uint8_t *)&table->version, checked) &&
         table->version == VERSION && table->frame_bytes > 0 &&
         table->frame_bytes <= LAMPWRIGHT_FRAME_BYTES &&
         table->frame_bytes == bytes_fitted(&table->board) && are_inputs_fitted(&table->board) &&
         table->packed_bytes <= FLASH_END - TABLE_AT - sizeof *table;
}

static void sleep_for_good(void) {
  for (;;) {
    __asm__ volatile("cpsid i\n\twfi");
  }
}

static uint8_t open_show(void) {
  const uint8_t *data = (const uint8_t *)(table + 1);
  if (table->scene == SITUATIONS) {
    return lampwright_react_open(data, table->packed_bytes);
  }
  return lampwright_show_open(data, table->packed_bytes, (uint8_t)table->scene);
}

int main(void) {
  if (!is_whole()) {
    sleep_for_good(); /* which pins there are is not known: none is touched */
  }
  lampwright_show_begin();
  if (open_show() != LAMPWRIGHT_OK) {
    lampwright_show_send(); /* all dark */
    lampwright_show_wait();
    sleep_for_good();
  }
  if (table->scene == SITUATIONS) {
    lampwright_inputs_begin();
    lampwright_show_start(); /* that took a while */
  }
  for (;;) {
    if (lampwright_show_due(table->ticks, table->part, table->missing)) {
      if (table->scene == SITUATIONS) {
        lampwright_react_frame();
      } else {
        lampwright_show_frame();
      }
    }
    lampwright_show_wait();
    if (table->scene == SITUATIONS) {
      lampwright_react_read();
    }
  }
}
