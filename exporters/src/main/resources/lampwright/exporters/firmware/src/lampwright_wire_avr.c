#include "lampwright_target.h"
#include "lampwright_wire.h"

#if LAMPWRIGHT_ON_AVR

#include <avr/interrupt.h>
#include <avr/io.h>

#include "lampwright_pins.h"

/*
 * Interrupts (LAMPWRIGHT_INTERRUPTS 1). They are let in while the line is low, once in each of the
 * bits 7 to 1 of every byte, and held off for the rest: for two bits at most, at bit 0 (2.6 us for
 * bits of 1.3 us), however long the chain is. After an interrupt routine returns, the controller
 * always does one more instruction, and that one holds interrupts off again; so one gap between
 * bits holds one routine at most, plus about ten cycles, and the gap does not grow when several are
 * due.
 *
 * A gap is harmless while it stays below what the pixels take for the end of a frame. Datasheets
 * say at which time they are sure to do so (reset: 50 or 80 us in older types, 280 or 300 us in
 * newer ones), not below which time they are sure not to. So keep the longest interrupt routine
 * well below the reset: half of it is a sound rule; pixels of the 50 us kind have been seen to give
 * up after less than 10 us (experience, not a datasheet). Where a routine must be longer, set
 * LAMPWRIGHT_INTERRUPTS 0: it then waits until the chain is sent (1.25 us a bit).
 */

#if !defined(F_CPU)
#error "F_CPU is not defined: give the compiler the clock in hertz, for example -DF_CPU=16000000UL"
#endif

#if LAMPWRIGHT_CHAINS > 8
#error "the wire driver for AVR sends up to 8 chains; this configuration has more"
#endif

/* See lampwright_wire_routine.h for what the two kinds of routine do. */
#if F_CPU >= 15000000
#define LAMPWRIGHT_WIRE_BY_PIN 1
#else
#define LAMPWRIGHT_WIRE_BY_PIN 0
#endif

#define MEGAHERTZ (F_CPU / 1000000)
#define MAX_OF(a, b) ((a) > (b) ? (a) : (b))
#define CYCLES(ns) (((ns)*MEGAHERTZ + 500) / 1000)

/*
 * A chain's times in whole cycles: the nearest to its pixels' own times that the routine can do.
 * T0L follows from the others, as both kinds of bit have the same length. At 16 MHz, for pixels of
 * 400/850/800/450 ns, T0H 6, T0L 15, T1H 13, T1L 8 (375, 938, 813, 500 ns); of 300/900/600/600 ns,
 * 5, 14, 10, 9 (313, 875, 625, 563 ns). At 8 MHz: 3, 7, 6, 4 (375, 875, 750, 500 ns) and 3, 7, 5, 5
 * (375, 875, 625, 625 ns). Where there is a choice T1L is rounded down, so that a 1 is high for
 * more than half of its length: instruments tell the bits apart by that.
 */
#if LAMPWRIGHT_WIRE_BY_PIN
#define T0H_OF(t0h) MAX_OF(4, CYCLES(t0h))
#define T1L_OF(t1l) MAX_OF(8, (t1l)*MEGAHERTZ / 1000)
#define T1H_OF(t0h, t1h, t1l) MAX_OF(T0H_OF(t0h) + 4, CYCLES(t1h))
#else
#define T0H_OF(t0h) MAX_OF(3, CYCLES(t0h))
#define T1L_OF(t1l) MAX_OF(4, CYCLES(t1l))
#define T1H_OF(t0h, t1h, t1l) MAX_OF(T0H_OF(t0h) + (T1L_OF(t1l) > 4 ? 2 : 3), CYCLES(t1h))
#endif

#define T0H(chain) T0H_OF(TIME(chain, T0H_NS))
#define T1L(chain) T1L_OF(TIME(chain, T1L_NS))
#define T1H(chain) T1H_OF(TIME(chain, T0H_NS), TIME(chain, T1H_NS), TIME(chain, T1L_NS))
#define T0L(chain) (T1H(chain) + T1L(chain) - T0H(chain))

#define OF_CHAIN(chain, what) LAMPWRIGHT_JOIN(LAMPWRIGHT_CHAIN_##chain, what)
#define TIME(chain, what) OF_CHAIN(chain, _##what)
#define PORT_LETTER(chain) LAMPWRIGHT_CHAIN_##chain##_PORT
#define MASK(chain) (1 << LAMPWRIGHT_CHAIN_##chain##_BIT)

/* 1 if a time in cycles is within the pixels' tolerance. */
#define WITHIN(cycles, ns, tolerance)                                                              \
  ((cycles)*1000 <= ((ns) + (tolerance)) * MEGAHERTZ &&                                            \
   (cycles)*1000 + (tolerance)*MEGAHERTZ >= (ns)*MEGAHERTZ)
#define IN_TIME(chain)                                                                             \
  (WITHIN(T0H(chain), TIME(chain, T0H_NS), TIME(chain, TOLERANCE_NS)) &&                           \
   WITHIN(T0L(chain), TIME(chain, T0L_NS), TIME(chain, TOLERANCE_NS)) &&                           \
   WITHIN(T1H(chain), TIME(chain, T1H_NS), TIME(chain, TOLERANCE_NS)) &&                           \
   WITHIN(T1L(chain), TIME(chain, T1L_NS), TIME(chain, TOLERANCE_NS)))
#define HAS_PIN(chain)                                                                             \
  LAMPWRIGHT_HAS_PIN(LAMPWRIGHT_CHAIN_##chain##_PORT, LAMPWRIGHT_CHAIN_##chain##_BIT)

/* Chains of one waveform share a routine; whole-port writes need one for each port as well. */
#define SAME_PORT(a, b)                                                                            \
  (LAMPWRIGHT_WIRE_BY_PIN ||                                                                       \
   LAMPWRIGHT_PORT_NUMBER(PORT_LETTER(a)) == LAMPWRIGHT_PORT_NUMBER(PORT_LETTER(b)))
#define SAME(a, b) (T0H(a) == T0H(b) && T1H(a) == T1H(b) && T1L(a) == T1L(b) && SAME_PORT(a, b))

#if LAMPWRIGHT_CHAINS > 0
#if !HAS_PIN(0)
#error "chain 0: this controller has no such pin; see LAMPWRIGHT_CHAIN_0_PORT and _BIT"
#elif !IN_TIME(0)
#error "chain 0: at this clock the bits cannot keep the times of its pixels"
#endif
#define ROUTINE_0 send_0
#define LAMPWRIGHT_ROUTINE send_0
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(0)
#define LAMPWRIGHT_T0H T0H(0)
#define LAMPWRIGHT_T1H T1H(0)
#define LAMPWRIGHT_T1L T1L(0)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif

#if LAMPWRIGHT_CHAINS > 1
#if !HAS_PIN(1)
#error "chain 1: this controller has no such pin; see LAMPWRIGHT_CHAIN_1_PORT and _BIT"
#elif !IN_TIME(1)
#error "chain 1: at this clock the bits cannot keep the times of its pixels"
#endif
#if SAME(1, 0)
#define ROUTINE_1 ROUTINE_0
#else
#define ROUTINE_1 send_1
#define LAMPWRIGHT_ROUTINE send_1
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(1)
#define LAMPWRIGHT_T0H T0H(1)
#define LAMPWRIGHT_T1H T1H(1)
#define LAMPWRIGHT_T1L T1L(1)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif
#endif

#if LAMPWRIGHT_CHAINS > 2
#if !HAS_PIN(2)
#error "chain 2: this controller has no such pin; see LAMPWRIGHT_CHAIN_2_PORT and _BIT"
#elif !IN_TIME(2)
#error "chain 2: at this clock the bits cannot keep the times of its pixels"
#endif
#if SAME(2, 0)
#define ROUTINE_2 ROUTINE_0
#elif SAME(2, 1)
#define ROUTINE_2 ROUTINE_1
#else
#define ROUTINE_2 send_2
#define LAMPWRIGHT_ROUTINE send_2
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(2)
#define LAMPWRIGHT_T0H T0H(2)
#define LAMPWRIGHT_T1H T1H(2)
#define LAMPWRIGHT_T1L T1L(2)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif
#endif

#if LAMPWRIGHT_CHAINS > 3
#if !HAS_PIN(3)
#error "chain 3: this controller has no such pin; see LAMPWRIGHT_CHAIN_3_PORT and _BIT"
#elif !IN_TIME(3)
#error "chain 3: at this clock the bits cannot keep the times of its pixels"
#endif
#if SAME(3, 0)
#define ROUTINE_3 ROUTINE_0
#elif SAME(3, 1)
#define ROUTINE_3 ROUTINE_1
#elif SAME(3, 2)
#define ROUTINE_3 ROUTINE_2
#else
#define ROUTINE_3 send_3
#define LAMPWRIGHT_ROUTINE send_3
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(3)
#define LAMPWRIGHT_T0H T0H(3)
#define LAMPWRIGHT_T1H T1H(3)
#define LAMPWRIGHT_T1L T1L(3)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif
#endif

#if LAMPWRIGHT_CHAINS > 4
#if !HAS_PIN(4)
#error "chain 4: this controller has no such pin; see LAMPWRIGHT_CHAIN_4_PORT and _BIT"
#elif !IN_TIME(4)
#error "chain 4: at this clock the bits cannot keep the times of its pixels"
#endif
#if SAME(4, 0)
#define ROUTINE_4 ROUTINE_0
#elif SAME(4, 1)
#define ROUTINE_4 ROUTINE_1
#elif SAME(4, 2)
#define ROUTINE_4 ROUTINE_2
#elif SAME(4, 3)
#define ROUTINE_4 ROUTINE_3
#else
#define ROUTINE_4 send_4
#define LAMPWRIGHT_ROUTINE send_4
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(4)
#define LAMPWRIGHT_T0H T0H(4)
#define LAMPWRIGHT_T1H T1H(4)
#define LAMPWRIGHT_T1L T1L(4)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif
#endif

#if LAMPWRIGHT_CHAINS > 5
#if !HAS_PIN(5)
#error "chain 5: this controller has no such pin; see LAMPWRIGHT_CHAIN_5_PORT and _BIT"
#elif !IN_TIME(5)
#error "chain 5: at this clock the bits cannot keep the times of its pixels"
#endif
#if SAME(5, 0)
#define ROUTINE_5 ROUTINE_0
#elif SAME(5, 1)
#define ROUTINE_5 ROUTINE_1
#elif SAME(5, 2)
#define ROUTINE_5 ROUTINE_2
#elif SAME(5, 3)
#define ROUTINE_5 ROUTINE_3
#elif SAME(5, 4)
#define ROUTINE_5 ROUTINE_4
#else
#define ROUTINE_5 send_5
#define LAMPWRIGHT_ROUTINE send_5
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(5)
#define LAMPWRIGHT_T0H T0H(5)
#define LAMPWRIGHT_T1H T1H(5)
#define LAMPWRIGHT_T1L T1L(5)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif
#endif

#if LAMPWRIGHT_CHAINS > 6
#if !HAS_PIN(6)
#error "chain 6: this controller has no such pin; see LAMPWRIGHT_CHAIN_6_PORT and _BIT"
#elif !IN_TIME(6)
#error "chain 6: at this clock the bits cannot keep the times of its pixels"
#endif
#if SAME(6, 0)
#define ROUTINE_6 ROUTINE_0
#elif SAME(6, 1)
#define ROUTINE_6 ROUTINE_1
#elif SAME(6, 2)
#define ROUTINE_6 ROUTINE_2
#elif SAME(6, 3)
#define ROUTINE_6 ROUTINE_3
#elif SAME(6, 4)
#define ROUTINE_6 ROUTINE_4
#elif SAME(6, 5)
#define ROUTINE_6 ROUTINE_5
#else
#define ROUTINE_6 send_6
#define LAMPWRIGHT_ROUTINE send_6
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(6)
#define LAMPWRIGHT_T0H T0H(6)
#define LAMPWRIGHT_T1H T1H(6)
#define LAMPWRIGHT_T1L T1L(6)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif
#endif

#if LAMPWRIGHT_CHAINS > 7
#if !HAS_PIN(7)
#error "chain 7: this controller has no such pin; see LAMPWRIGHT_CHAIN_7_PORT and _BIT"
#elif !IN_TIME(7)
#error "chain 7: at this clock the bits cannot keep the times of its pixels"
#endif
#if SAME(7, 0)
#define ROUTINE_7 ROUTINE_0
#elif SAME(7, 1)
#define ROUTINE_7 ROUTINE_1
#elif SAME(7, 2)
#define ROUTINE_7 ROUTINE_2
#elif SAME(7, 3)
#define ROUTINE_7 ROUTINE_3
#elif SAME(7, 4)
#define ROUTINE_7 ROUTINE_4
#elif SAME(7, 5)
#define ROUTINE_7 ROUTINE_5
#elif SAME(7, 6)
#define ROUTINE_7 ROUTINE_6
#else
#define ROUTINE_7 send_7
#define LAMPWRIGHT_ROUTINE send_7
#define LAMPWRIGHT_ROUTINE_PORT PORT_LETTER(7)
#define LAMPWRIGHT_T0H T0H(7)
#define LAMPWRIGHT_T1H T1H(7)
#define LAMPWRIGHT_T1L T1L(7)
#include "lampwright_wire_routine.h"
#undef LAMPWRIGHT_ROUTINE
#undef LAMPWRIGHT_ROUTINE_PORT
#undef LAMPWRIGHT_T0H
#undef LAMPWRIGHT_T1H
#undef LAMPWRIGHT_T1L
#endif
#endif

#define PORT_OF(chain) LAMPWRIGHT_JOIN(PORT, PORT_LETTER(chain))
#define PIN_OF(chain) LAMPWRIGHT_JOIN(PIN, PORT_LETTER(chain))
#define DDR_OF(chain) LAMPWRIGHT_JOIN(DDR, PORT_LETTER(chain))

#define BEGIN(chain)                                                                               \
  PORT_OF(chain) &= (uint8_t)~MASK(chain);                                                         \
  DDR_OF(chain) |= MASK(chain)

/* The line is set low first, in case the builder's code has left it high: the routine flips it. */
#if LAMPWRIGHT_WIRE_BY_PIN
#define SEND(chain)                                                                                \
  PORT_OF(chain) &= (uint8_t)~MASK(chain);                                                         \
  ROUTINE(chain)(frame, OF_CHAIN(chain, _BYTES), &PIN_OF(chain), MASK(chain), saved)
#else
#define SEND(chain)                                                                                \
  ROUTINE(chain)                                                                                   \
  (frame, OF_CHAIN(chain, _BYTES), PORT_OF(chain) | MASK(chain),                                   \
   PORT_OF(chain) & (uint8_t)~MASK(chain))
#endif
#define ROUTINE(chain) ROUTINE_##chain

void lampwright_wire_begin(void) {
#if LAMPWRIGHT_CHAINS > 0
  BEGIN(0);
#endif
#if LAMPWRIGHT_CHAINS > 1
  BEGIN(1);
#endif
#if LAMPWRIGHT_CHAINS > 2
  BEGIN(2);
#endif
#if LAMPWRIGHT_CHAINS > 3
  BEGIN(3);
#endif
#if LAMPWRIGHT_CHAINS > 4
  BEGIN(4);
#endif
#if LAMPWRIGHT_CHAINS > 5
  BEGIN(5);
#endif
#if LAMPWRIGHT_CHAINS > 6
  BEGIN(6);
#endif
#if LAMPWRIGHT_CHAINS > 7
  BEGIN(7);
#endif
}

void lampwright_wire_send(const uint8_t *frame) {
#if LAMPWRIGHT_CHAINS > 0
  uint8_t saved = SREG;
  __builtin_avr_delay_cycles(MEGAHERTZ * LAMPWRIGHT_RESET_US);
#endif
#if LAMPWRIGHT_CHAINS > 0
  cli();
  SEND(0);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS > 1
  frame += OF_CHAIN(0, _BYTES);
  cli();
  SEND(1);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS > 2
  frame += OF_CHAIN(1, _BYTES);
  cli();
  SEND(2);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS > 3
  frame += OF_CHAIN(2, _BYTES);
  cli();
  SEND(3);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS > 4
  frame += OF_CHAIN(3, _BYTES);
  cli();
  SEND(4);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS > 5
  frame += OF_CHAIN(4, _BYTES);
  cli();
  SEND(5);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS > 6
  frame += OF_CHAIN(5, _BYTES);
  cli();
  SEND(6);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS > 7
  frame += OF_CHAIN(6, _BYTES);
  cli();
  SEND(7);
  SREG = saved;
#endif
#if LAMPWRIGHT_CHAINS == 0
  (void)frame;
#endif
}

#endif
