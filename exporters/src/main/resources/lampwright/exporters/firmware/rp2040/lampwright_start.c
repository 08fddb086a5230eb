/* From the second boot stage to main, without an IDE and without an SDK. */
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include "lampwright_rp2040_registers.h"

#define XOSC_DELAY 470UL /* of 256 periods: 10 ms, for crystals that are slow to start */
#define XOSC_MEGAHERTZ 12UL
#define PLL_MULTIPLIER 125UL /* 12 MHz x 125 / 6 / 2 = 125 MHz */
#define PLL_DIVIDERS (6UL << 16 | 2UL << 12)

#define BLOCKS                                                                                     \
  (RESET_DMA | RESET_IO_BANK0 | RESET_PADS_BANK0 | RESET_PIO0 | RESET_PIO1 | RESET_PLL_SYS |       \
   RESET_PWM | RESET_TIMER)

/* From show.ld; of the second the address is the number. */
extern uint32_t lampwright_bss[];
extern uint8_t lampwright_bss_bytes[];
extern uint32_t lampwright_stack_top[];

/* C++ has no word for calling main. */
int lampwright_main(void) __asm__("main");

static void select_source(uint32_t control, uint32_t selected, uint32_t source) {
  REGISTER(control) = source;
  while (REGISTER(selected) != 1UL << source) {
  }
}

/* Crystal of 12 MHz, 125 MHz for the system, microseconds for the timer. */
static void start_clocks(void) {
  select_source(CLK_SYS_CTRL, CLK_SYS_SELECTED, CLK_SYS_FROM_REF);
  select_source(CLK_REF_CTRL, CLK_REF_SELECTED, CLK_REF_FROM_ROSC);

  SET_BITS(RESETS_RESET) = BLOCKS;
  CLEAR_BITS(RESETS_RESET) = BLOCKS;
  while ((REGISTER(RESETS_RESET_DONE) & BLOCKS) != BLOCKS) {
  }

  REGISTER(XOSC_STARTUP) = XOSC_DELAY;
  REGISTER(XOSC_CTRL) = XOSC_ENABLE | XOSC_1_TO_15_MHZ;
  while (!(REGISTER(XOSC_STATUS) & XOSC_STABLE)) {
  }
  select_source(CLK_REF_CTRL, CLK_REF_SELECTED, CLK_REF_FROM_XOSC);
  REGISTER(WATCHDOG_TICK) = WATCHDOG_TICK_ENABLE | XOSC_MEGAHERTZ;

  REGISTER(PLL_SYS_CS) = 1;
  REGISTER(PLL_SYS_FBDIV_INT) = PLL_MULTIPLIER;
  CLEAR_BITS(PLL_SYS_PWR) = PLL_PD | PLL_VCOPD;
  while (!(REGISTER(PLL_SYS_CS) & PLL_LOCK)) {
  }
  REGISTER(PLL_SYS_PRIM) = PLL_DIVIDERS;
  CLEAR_BITS(PLL_SYS_PWR) = PLL_POSTDIVPD;
  REGISTER(CLK_SYS_CTRL) = CLK_SYS_AUX_PLL_SYS;
  select_source(CLK_SYS_CTRL, CLK_SYS_SELECTED, CLK_SYS_FROM_AUX);
}

static void start(void) {
  start_clocks();
  memset(lampwright_bss, 0, (size_t)(uintptr_t)lampwright_bss_bytes);
  (void)lampwright_main();
  for (;;) {
  }
}

/* Nothing should come here. What the pixels have they keep; nothing else is sent. */
static void stop(void) {
  for (;;) {
    __asm__ volatile("wfi");
  }
}

typedef struct {
  uint32_t *stack;            /* cppcheck-suppress unusedStructMember */
  void (*routines[15])(void); /* cppcheck-suppress unusedStructMember */
} vector_table;

__attribute__((section(".vectors"), used)) static const vector_table vectors = {
    lampwright_stack_top,
    {start, stop, stop, stop, stop, stop, stop, stop, stop, stop, stop, stop, stop, stop, stop}};

/*
 * What a compiler may call without being asked to; there is no C library. The empty instructions
 * keep it from making calls of these functions out of their own loops.
 */
#define KEEP_LOOP __asm__ volatile("" ::: "memory")

void *memset(void *to, int value, size_t count) {
  uint8_t *next = (uint8_t *)to;
  uint32_t four = (uint8_t)value * 0x01010101UL;
  while (count >= 4 && ((uintptr_t)next & 3) == 0) {
    *(uint32_t *)(void *)next = four;
    next += 4;
    count -= 4;
    KEEP_LOOP;
  }
  while (count-- > 0) {
    *next++ = (uint8_t)value;
    KEEP_LOOP;
  }
  return to;
}

void *memcpy(void *to, const void *from, size_t count) {
  uint8_t *next = (uint8_t *)to;
  const uint8_t *source = (const uint8_t *)from;
  /* A chain's bytes are at the same place in frame and copy, so they can go four at a time. */
  if ((((uintptr_t)next ^ (uintptr_t)source) & 3) == 0) {
    while (count > 0 && ((uintptr_t)next & 3) != 0) {
      *next++ = *source++;
      count--;
      KEEP_LOOP;
    }
    while (count >= 4) {
      *(uint32_t *)(void *)next = *(const uint32_t *)(const void *)source;
      next += 4;
      source += 4;
      count -= 4;
      KEEP_LOOP;
    }
  }
  while (count-- > 0) {
    *next++ = *source++;
    KEEP_LOOP;
  }
  return to;
}
