#include "lampwright_inputs.h"

#include "lampwright_board.h"
#include "lampwright_clock.h"
#include "lampwright_situations.h"
#include "lampwright_target.h"

#if LAMPWRIGHT_FITS_BOARD

#include "lampwright_rp2040_registers.h"

/*
 * A receiver channel is measured by a state machine, from the last one downwards: chains have them
 * from the first upwards. No interrupt routine is needed, and nothing that the core does moves an
 * edge. A step has 40 ns, as for chains, and a count five of them.
 *
 *   place   instruction       steps
 *   0       wait 0 pin 0              a pulse that is under way is none
 *   1       mov x, ~null      1       counts down from the most
 *   2       wait 1 pin 0
 *   3       jmp x--, 5        2       one more count
 *   4       jmp 0                     too long for a pulse: 14 minutes
 *   5       jmp pin, 3        3       still high?
 *   6       mov isr, ~x
 *   7       push noblock              what nobody reads stays, eight of them; then 0 follows
 */
#define PROGRAM_PLACES 8
#define MACHINES 4
#define QUEUE_WORDS 8
#define COUNTS_PER_US 5UL

#define WAIT_LOW 0x2020UL
#define WAIT_HIGH 0x20A0UL
#define MOV_X_ONES 0xA02BUL
#define JMP 0x0000UL
#define JMP_X_DOWN 0x0040UL
#define JMP_PIN 0x00C0UL
#define MOV_ISR_NOT_X 0xA0C9UL
#define PUSH_NOBLOCK 0x8000UL
#define FOR(steps) (((steps)-1UL) << 8)

/* Counts of a pulse that lasts longer than any of a receiver; the machine refuses less. */
#define MOST_COUNTS (COUNTS_PER_US * 4000UL)

/* Pulls need some microseconds, and a receiver that is on sends a pulse every 20 ms. */
#define SETTLE_US 25000UL

static uint32_t machine_of(uint32_t channel) { return LAMPWRIGHT_BOARD_MACHINES - 1 - channel; }

static void measure(uint32_t channel, uint32_t pin) {
  uint32_t pio = machine_of(channel) / MACHINES;
  uint32_t machine = machine_of(channel) % MACHINES;
  uint32_t first = PROGRAM_PLACES * machine;
  CLEAR_BITS(PIO_CTRL(pio)) = PIO_ENABLE(machine);
  REGISTER(PIO_INSTR_MEM(pio, first)) = WAIT_LOW;
  REGISTER(PIO_INSTR_MEM(pio, first + 1)) = MOV_X_ONES;
  REGISTER(PIO_INSTR_MEM(pio, first + 2)) = WAIT_HIGH;
  REGISTER(PIO_INSTR_MEM(pio, first + 3)) = JMP_X_DOWN | (first + 5) | FOR(2);
  REGISTER(PIO_INSTR_MEM(pio, first + 4)) = JMP | first;
  REGISTER(PIO_INSTR_MEM(pio, first + 5)) = JMP_PIN | (first + 3) | FOR(3);
  REGISTER(PIO_INSTR_MEM(pio, first + 6)) = MOV_ISR_NOT_X;
  REGISTER(PIO_INSTR_MEM(pio, first + 7)) = PUSH_NOBLOCK;
  REGISTER(PIO_CLKDIV(pio, machine)) = (uint32_t)lampwright_fitted->pio_divider << 16;
  /* From place 7 to place 0; the pin that a jump looks at. */
  REGISTER(PIO_EXECCTRL(pio, machine)) = pin << 24 | (first + 7) << 12 | first << 7;
  /* Both FIFOs as one. */
  REGISTER(PIO_SHIFTCTRL(pio, machine)) = 1UL << 31;
  /* The pin that is waited for. */
  REGISTER(PIO_PINCTRL(pio, machine)) = pin << 15;
  SET_BITS(PIO_CTRL(pio)) = PIO_RESTART(machine) | PIO_CLKDIV_RESTART(machine);
  REGISTER(PIO_INSTR(pio, machine)) = JMP | first;
  SET_BITS(PIO_CTRL(pio)) = PIO_ENABLE(machine);
#if !defined(ARDUINO)
  /* Masked, it ends a sleep, and no routine is called. */
  SET_BITS(PIO_IRQ0_INTE(pio)) = PIO_RX_WAITS(machine);
  REGISTER(NVIC_ISER) = pio == 0 ? IRQ_PIO0_0 : IRQ_PIO1_0;
#endif
}

void lampwright_inputs_begin(void) {
  uint8_t number;
  uint32_t channel = 0;
  uint32_t used = RESET_PIO0 | RESET_PIO1 | RESET_IO_BANK0 | RESET_PADS_BANK0;
  CLEAR_BITS(RESETS_RESET) = used;
  while ((REGISTER(RESETS_RESET_DONE) & used) != used) {
  }
  for (number = 0; number < lampwright_fitted->inputs; number++) {
    const lampwright_board_input *input = &lampwright_fitted->input[number];
    uint32_t pull = input->kind == LAMPWRIGHT_BOARD_SWITCH_TO_GROUND ? PAD_PULL_UP : PAD_PULL_DOWN;
    REGISTER(PADS_BANK0_PAD(input->pin)) = PAD_NO_OUTPUT | PAD_INPUT | pull | PAD_SCHMITT;
    REGISTER(IO_BANK0_CTRL(input->pin)) = FUNCTION_NONE;
    if (input->kind == LAMPWRIGHT_BOARD_CHANNEL) {
      measure(channel++, input->pin);
    }
  }
  lampwright_clock_wait(lampwright_clock_now() + SETTLE_US);
}

/* Hands on the widths that a machine has measured, as many as its FIFO holds, the oldest first. */
static void read_channel(const lampwright_player *player, uint8_t number, uint32_t channel) {
  uint32_t pio = machine_of(channel) / MACHINES;
  uint32_t machine = machine_of(channel) % MACHINES;
  uint8_t left;
  for (left = QUEUE_WORDS; left != 0 && !(REGISTER(PIO_FSTAT(pio)) & PIO_RX_EMPTY(machine));
       left--) {
    uint32_t counts = REGISTER(PIO_RXF(pio, machine));
    if (counts <= MOST_COUNTS) {
      /* A machine sees the end of a pulse a count late; to the nearest microsecond. */
      lampwright_situations_input(player, number, (uint16_t)((counts + 1) / COUNTS_PER_US));
    }
  }
}

void lampwright_inputs_read(const lampwright_player *player) {
  uint8_t number;
  uint32_t channel = 0;
  uint32_t levels = REGISTER(SIO_GPIO_IN);
  for (number = 0; number < lampwright_fitted->inputs; number++) {
    const lampwright_board_input *input = &lampwright_fitted->input[number];
    if (input->kind == LAMPWRIGHT_BOARD_CHANNEL) {
      read_channel(player, number, channel++);
    } else {
      lampwright_situations_input(player, number, (uint16_t)(levels >> input->pin & 1));
    }
  }
#if !defined(ARDUINO)
  /* What is still in a FIFO, or comes now, is pending anew. */
  REGISTER(NVIC_ICPR) = IRQ_PIO0_0 | IRQ_PIO1_0;
#endif
}

#endif
