/*
 * One sending routine. lampwright_wire_avr.c includes this file once for each waveform that the
 * chains need, with these defined (times in cycles of the controller's clock):
 *   LAMPWRIGHT_ROUTINE        its name
 *   LAMPWRIGHT_T0H, _T1H      high time of a 0 bit and of a 1 bit
 *   LAMPWRIGHT_T1L            low time of a 1 bit; a 0 bit has the same whole length
 *   LAMPWRIGHT_ROUTINE_PORT   the port's letter (only where LAMPWRIGHT_WIRE_BY_PIN is 0)
 * There is no include guard, on purpose.
 *
 * Every bit of a chain, the last of a byte and of a pixel too, has exactly the same length; the
 * next byte is fetched inside a bit.
 *
 * In the comments, t is the cycle at whose end the instruction is done, counted from the rising
 * edge; d0, d1 and d2 are the filled-in cycles. "1 |" is the path of a 1 bit, "0 |" that of a 0
 * bit.
 */

/* clang-format off */

#if LAMPWRIGHT_WIRE_BY_PIN

/*
 * From 15 MHz up. Writing a 1 to a PIN register flips that one output and no other, in one go, so
 * an interrupt routine may change other pins of the same port at any time.
 * `pin` is the address of the PIN register, `saved` the status register as found: where interrupts
 * were off when the caller called, they stay off.
 */
static void LAMPWRIGHT_ROUTINE(const uint8_t *bytes, uint16_t count, volatile uint8_t *pin,
                               uint8_t mask, uint8_t saved) {
  uint8_t data;
  uint8_t bits;
  __asm__ __volatile__(
      ".macro lampwright_fill n"        "\n\t" /* n cycles, two in each word */
      ".rept (\\n) / 2"                 "\n\t"
      "rjmp .+0"                        "\n\t"
      ".endr"                           "\n\t"
      ".rept (\\n) %% 2"                "\n\t"
      "nop"                             "\n\t"
      ".endr"                           "\n\t"
      ".endm"                           "\n\t"
      "ld %[data], %a[bytes]+"          "\n\t"
      "ldi %[bits], 7"                  "\n"
      "1:"                              "\n\t" /* bits 7 to 1 */
      "st %a[pin], %[mask]"             "\n\t" /* 2  rising edge, t = 0 */
      "lsl %[data]"                     "\n\t" /* 1  t = 1; carry = this bit */
      "lampwright_fill %[d0]"           "\n\t" /* d0 t = T0H - 3 */
      "brcs 2f"                         "\n\t" /* 1 | 2 cycles, t = T0H - 1    0 | 1 cycle, t = T0H - 2 */
      "st %a[pin], %[mask]"             "\n"   /*                              0 | 2, falling edge, t = T0H */
      "2:"                              "\n\t"
      "lampwright_fill %[d1]"           "\n\t" /* d1 1 | t = T1H - 3           0 | t = T1H - 2 */
      "brcc 3f"                         "\n\t" /* 1 | 1 cycle, t = T1H - 2     0 | 2 cycles, t = T1H */
      "st %a[pin], %[mask]"             "\n"   /* 1 | 2, falling edge, t = T1H */
      "3:"                              "\n\t"
      ".if %[window]"                   "\n\t"
      "sbrc %[saved], 7"                "\n\t" /* 1  t = T1H + 1  (2 with sei, if it skips) */
      "sei"                             "\n\t" /* 1  t = T1H + 2  takes hold after the next instruction */
      "dec %[bits]"                     "\n\t" /* 1  t = T1H + 3  one interrupt can come in here */
      "cli"                             "\n\t" /* 1  t = T1H + 4 */
      ".else"                           "\n\t"
      "dec %[bits]"                     "\n\t" /* 1 */
      "lampwright_fill 3"               "\n\t" /* 3  t = T1H + 4 */
      ".endif"                          "\n\t"
      "lampwright_fill %[d2]"           "\n\t" /* d2 t = T1H + T1L - 4 */
      "brne 1b"                         "\n\t" /* 2  t = T1H + T1L - 2; then st, t = T1H + T1L
                                                  1  after bit 1: t = T1H + T1L - 3 */
      "ldi %[bits], 7"                  "\n\t" /* 1  t = T1H + T1L - 2 */
      "st %a[pin], %[mask]"             "\n\t" /* 2  rising edge of bit 0, t = 0 */
      "lsl %[data]"                     "\n\t" /* 1  t = 1 */
      "lampwright_fill %[d0]"           "\n\t" /* d0 t = T0H - 3 */
      "brcs 4f"                         "\n\t" /* 1 | 2 cycles, t = T0H - 1    0 | 1 cycle, t = T0H - 2 */
      "st %a[pin], %[mask]"             "\n"   /*                              0 | 2, falling edge, t = T0H */
      "4:"                              "\n\t"
      "ld %[data], %a[bytes]+"          "\n\t" /* 2  the next byte; carry still holds bit 0 */
      "lampwright_fill (%[d1]-2)"       "\n\t" /*    1 | t = T1H - 3           0 | t = T1H - 2 */
      "brcc 5f"                         "\n\t" /* 1 | 1 cycle, t = T1H - 2     0 | 2 cycles, t = T1H */
      "st %a[pin], %[mask]"             "\n"   /* 1 | 2, falling edge, t = T1H */
      "5:"                              "\n\t"
      "subi %A[count], 1"               "\n\t" /* 1  t = T1H + 1 */
      "sbci %B[count], 0"               "\n\t" /* 1  t = T1H + 2 */
      "lampwright_fill (%[d2]+2)"       "\n\t" /*    t = T1H + T1L - 4 */
      "brne 1b"                         "\n\t" /* 2  t = T1H + T1L - 2; then st, t = T1H + T1L */
      ".purgem lampwright_fill"         "\n\t"
      : [data] "=&r"(data), [bits] "=&d"(bits), [bytes] "+x"(bytes), [count] "+d"(count)
      : [pin] "z"(pin), [mask] "r"(mask), [saved] "r"(saved), [window] "n"(LAMPWRIGHT_INTERRUPTS),
        [d0] "n"(LAMPWRIGHT_T0H - 4), [d1] "n"(LAMPWRIGHT_T1H - LAMPWRIGHT_T0H - 2),
        [d2] "n"(LAMPWRIGHT_T1L - 8)
      : "memory");
}

#else

/*
 * Below 15 MHz, where a bit is as short as 10 cycles. Whole-port writes, one cycle each: an
 * interrupt routine must not change other pins of this port while a chain is being sent, or set
 * LAMPWRIGHT_INTERRUPTS 0. Interrupts are on when it returns (with LAMPWRIGHT_INTERRUPTS 1).
 * `high` and `low` are what to write to the port for a high and a low line.
 */
static void LAMPWRIGHT_ROUTINE(const uint8_t *bytes, uint16_t count, uint8_t high, uint8_t low) {
  uint8_t data;
  uint8_t bits;
  __asm__ __volatile__(
      ".macro lampwright_fill n"        "\n\t" /* n cycles, two in each word */
      ".rept (\\n) / 2"                 "\n\t"
      "rjmp .+0"                        "\n\t"
      ".endr"                           "\n\t"
      ".rept (\\n) %% 2"                "\n\t"
      "nop"                             "\n\t"
      ".endr"                           "\n\t"
      ".endm"                           "\n\t"
      ".macro lampwright_window on"     "\n\t" /* 1 cycle; an interrupt can come in after the next */
      ".if \\on"                        "\n\t"
      "sei"                             "\n\t"
      ".else"                           "\n\t"
      "nop"                             "\n\t"
      ".endif"                          "\n\t"
      ".endm"                           "\n\t"
      "ld %[data], %a[bytes]+"          "\n\t"
      "ldi %[bits], 7"                  "\n"
      "1:"                              "\n\t" /* bits 7 to 1 */
      "out %[port], %[high]"            "\n\t" /* 1  rising edge, t = 0 */
      "lsl %[data]"                     "\n\t" /* 1  t = 1; carry = this bit */
      "lampwright_fill %[d0]"           "\n\t" /* d0 t = T0H - 2 */
      "brcs 2f"                         "\n\t" /* 1 | 2 cycles, t = T0H       0 | 1 cycle, t = T0H - 1 */
      "out %[port], %[low]"             "\n"   /*                             0 | 1, falling edge, t = T0H */
      "2:"                              "\n\t"
      ".if %[late] == 0"                "\n\t" /* T1L of 4 cycles: count before the falling edge */
      "dec %[bits]"                     "\n\t" /* 1  t = T0H + 1 */
      ".endif"                          "\n\t"
      "lampwright_fill %[d1]"           "\n\t" /* d1 t = T1H - 2 */
      "lampwright_window %[window]"     "\n\t" /* 1  t = T1H - 1 */
      "out %[port], %[low]"             "\n\t" /* 1  falling edge of a 1, t = T1H; one interrupt can
                                                     come in now, the line being low */
      "cli"                             "\n\t" /* 1  t = T1H + 1 */
      ".if %[late]"                     "\n\t" /* longer T1L: count after it */
      "dec %[bits]"                     "\n\t" /* 1  t = T1H + 2 */
      ".endif"                          "\n\t"
      "lampwright_fill %[d2]"           "\n\t" /* d2 t = T1H + T1L - 3 */
      "brne 1b"                         "\n\t" /* 2  t = T1H + T1L - 1; then out, t = T1H + T1L
                                                  1  after bit 1: t = T1H + T1L - 2 */
      "ldi %[bits], 7"                  "\n\t" /* 1  t = T1H + T1L - 1 */
      "out %[port], %[high]"            "\n\t" /* 1  rising edge of bit 0, t = 0 */
      "subi %A[count], 1"               "\n\t" /* 1  t = 1 */
      "lampwright_fill %[d0]"           "\n\t" /* d0 t = T0H - 2 */
      "sbrs %[data], 7"                 "\n\t" /* 1 | 2 cycles, t = T0H       0 | 1 cycle, t = T0H - 1 */
      "out %[port], %[low]"             "\n\t" /*                             0 | 1, falling edge, t = T0H */
      ".if %[late]"                     "\n\t"
      "sbci %B[count], 0"               "\n\t" /* 1  t = T0H + 1 */
      "lampwright_fill %[d1]"           "\n\t" /* d1 t = T1H - 1 */
      "out %[port], %[low]"             "\n\t" /* 1  falling edge of a 1, t = T1H */
      "ld %[data], %a[bytes]+"          "\n\t" /* 2  t = T1H + 2; the next byte */
      ".else"                           "\n\t"
      "ld %[data], %a[bytes]+"          "\n\t" /* 2  t = T0H + 2; the next byte */
      "lampwright_fill %[d1]"           "\n\t" /* d1 t = T1H - 1 */
      "out %[port], %[low]"             "\n\t" /* 1  falling edge of a 1, t = T1H */
      "sbci %B[count], 0"               "\n\t" /* 1  t = T1H + 1 */
      ".endif"                          "\n\t"
      "lampwright_fill %[d2]"           "\n\t" /* d2 t = T1H + T1L - 3 */
      "brne 1b"                         "\n\t" /* 2  t = T1H + T1L - 1; then out, t = T1H + T1L */
      ".purgem lampwright_fill"         "\n\t"
      ".purgem lampwright_window"       "\n\t"
      : [data] "=&r"(data), [bits] "=&d"(bits), [bytes] "+e"(bytes), [count] "+d"(count)
      : [port] "I"(_SFR_IO_ADDR(LAMPWRIGHT_JOIN(PORT, LAMPWRIGHT_ROUTINE_PORT))), [high] "r"(high),
        [low] "r"(low), [window] "n"(LAMPWRIGHT_INTERRUPTS), [late] "n"(LAMPWRIGHT_T1L > 4),
        [d0] "n"(LAMPWRIGHT_T0H - 3),
        [d1] "n"(LAMPWRIGHT_T1H - LAMPWRIGHT_T0H - (LAMPWRIGHT_T1L > 4 ? 2 : 3)),
        [d2] "n"(LAMPWRIGHT_T1L - (LAMPWRIGHT_T1L > 4 ? 5 : 4))
      : "memory");
}

#endif

/* clang-format on */
