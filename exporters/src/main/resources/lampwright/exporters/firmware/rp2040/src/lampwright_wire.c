#include "lampwright_wire.h"

#include <string.h>

#include "lampwright_board.h"
#include "lampwright_clock.h"
#include "lampwright_target.h"

#if LAMPWRIGHT_FITS_BOARD && LAMPWRIGHT_CHAINS > 0

#include "lampwright_rp2040_registers.h"

/*
 * Chain n is sent by state machine n % 4 of PIO n / 4 and DMA channel n, all chains at once, while
 * the controller sleeps or decodes. Each state machine has a program of its own:
 *
 *   place   instruction   line   for
 *   0       out x, 1      low    low       waits here, low, for the next byte
 *   1       jmp !x, 3     high   high
 *   2       jmp 0         high   high_1    a 1
 *   3       nop           low    low_0     a 0; then 0 follows
 */
#define PROGRAM_PLACES 8
#define MACHINES 4

#define OUT_X_1 0x6021UL
#define JMP 0x0000UL
#define JMP_NOT_X 0x0020UL
#define NOP 0xA042UL
#define SET_PINS_0 0xE000UL
#define SET_PINDIRS_1 0xE081UL
#define LOW 0UL
#define HIGH (1UL << 12)
#define FOR(steps) (((steps)-1UL) << 8)

/* What is on its way: the player may change the frame meanwhile. */
static uint8_t sent[LAMPWRIGHT_FRAME_BYTES] __attribute__((aligned(4)));

/* When each chain's pixels can take the next frame. */
static lampwright_ticks free_at[LAMPWRIGHT_CHAINS];

static void begin(uint32_t number) {
  const lampwright_board_chain *chain = &lampwright_fitted->chain[number];
  uint32_t pio = number / MACHINES;
  uint32_t machine = number % MACHINES;
  uint32_t first = PROGRAM_PLACES * machine;
  uint32_t pin = chain->pin;
  CLEAR_BITS(PIO_CTRL(pio)) = PIO_ENABLE(machine);
  REGISTER(PIO_INSTR_MEM(pio, first)) = OUT_X_1 | LOW | FOR(chain->low);
  REGISTER(PIO_INSTR_MEM(pio, first + 1)) = JMP_NOT_X | (first + 3) | HIGH | FOR(chain->high);
  REGISTER(PIO_INSTR_MEM(pio, first + 2)) = JMP | first | HIGH | FOR(chain->high_1);
  REGISTER(PIO_INSTR_MEM(pio, first + 3)) = NOP | LOW | FOR(chain->low_0);
  REGISTER(PIO_CLKDIV(pio, machine)) = (uint32_t)lampwright_fitted->pio_divider << 16;
  /* From place 3 to place 0. */
  REGISTER(PIO_EXECCTRL(pio, machine)) = (first + 3) << 12 | first << 7;
  /* Both FIFOs as one; 8 bits, most significant first, and then the next byte by itself. */
  REGISTER(PIO_SHIFTCTRL(pio, machine)) = 1UL << 30 | 8UL << 25 | 1UL << 17;
  /* One pin, for side-set and set. */
  REGISTER(PIO_PINCTRL(pio, machine)) = 1UL << 29 | 1UL << 26 | pin << 10 | pin << 5;
  /* Without a restart its shift register counts as full, and it would send 32 bits of nothing. */
  SET_BITS(PIO_CTRL(pio)) = PIO_RESTART(machine) | PIO_CLKDIV_RESTART(machine);
  REGISTER(PIO_INSTR(pio, machine)) = SET_PINS_0;
  REGISTER(PIO_INSTR(pio, machine)) = SET_PINDIRS_1;
  REGISTER(PIO_INSTR(pio, machine)) = JMP | first;
  REGISTER(PADS_BANK0_PAD(pin)) = PAD_4_MILLIAMPS | PAD_PULL_DOWN | PAD_SCHMITT;
  REGISTER(IO_BANK0_CTRL(pin)) = FUNCTION_PIO0 + pio;
  SET_BITS(PIO_CTRL(pio)) = PIO_ENABLE(machine);
}

void lampwright_wire_begin(void) {
  uint8_t number;
  uint32_t used = RESET_PIO0 | RESET_PIO1 | RESET_DMA | RESET_IO_BANK0 | RESET_PADS_BANK0;
  CLEAR_BITS(RESETS_RESET) = used;
  while ((REGISTER(RESETS_RESET_DONE) & used) != used) {
  }
  for (number = 0; number < lampwright_fitted->chains; number++) {
    begin(number);
    /* What was on the line before may have been no reset. */
    free_at[number] = lampwright_clock_now() + lampwright_fitted->chain[number].busy_us;
  }
  lampwright_wire_rest();
}

void lampwright_wire_rest(void) {
  uint8_t number;
  for (number = 0; number < lampwright_fitted->chains; number++) {
    while (REGISTER(DMA_CTRL_TRIG(number)) & DMA_BUSY) {
    }
    lampwright_clock_wait(free_at[number]);
  }
}

uint16_t lampwright_wire_bytes(uint8_t chain) {
  return chain < lampwright_fitted->chains ? lampwright_fitted->chain[chain].bytes : 0;
}

void lampwright_wire_chain(uint8_t chain, const uint8_t *bytes) {
  uint16_t count = lampwright_wire_bytes(chain);
  uint32_t pio = chain / MACHINES;
  uint32_t machine = chain % MACHINES;
  uint8_t *copy = sent;
  uint8_t before;
  if (count == 0) {
    return;
  }
  for (before = 0; before < chain; before++) {
    copy += lampwright_wire_bytes(before);
  }
  memcpy(copy, bytes, count);
  free_at[chain] = lampwright_clock_now() + lampwright_fitted->chain[chain].busy_us;
  REGISTER(DMA_READ_ADDR(chain)) = (uint32_t)(uintptr_t)copy;
  REGISTER(DMA_WRITE_ADDR(chain)) = (uint32_t)PIO_TXF(pio, machine);
  REGISTER(DMA_TRANS_COUNT(chain)) = count;
  /* A byte that is written to a FIFO is there four times, so in its most significant byte too. */
  REGISTER(DMA_CTRL_TRIG(chain)) = DMA_IRQ_QUIET | DMA_REQUEST(PIO_REQUEST_TX(pio, machine)) |
                                   DMA_CHAIN_TO((uint32_t)chain) | DMA_INCR_READ | DMA_SIZE_BYTE |
                                   DMA_ENABLE;
}

#endif
