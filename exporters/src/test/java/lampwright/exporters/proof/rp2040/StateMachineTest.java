package lampwright.exporters.proof.rp2040;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Each instruction of a state machine, encoded as in the RP2040 datasheet, 3.4, from memory; what
 * it gives is worked out by hand and comes back by the queue.
 */
class StateMachineTest {
  private static final int FSTAT = Bench.PIO0 + 4;
  private static final int FDEBUG = Bench.PIO0 + 8;
  private static final int TXF = Bench.PIO0 + 0x10;
  private static final int RXF = Bench.PIO0 + 0x20;
  private static final int IRQ = Bench.PIO0 + 0x30;
  private static final int ADDR = Bench.PIO0 + 0xD4;
  private static final int INSTR = Bench.PIO0 + 0xD8;

  // SHIFTCTRL.
  private static final int OUT_RIGHT = 1 << 19;
  private static final int IN_RIGHT = 1 << 18;
  private static final int AUTOPULL = 1 << 17;
  private static final int AUTOPUSH = 1 << 16;

  private static final int PUSH = 0x8020;
  private static final int PUSH_LOSES = 0x8000;
  private static final int PUSH_IF_FULL = 0x8060;
  private static final int PULL = 0x80A0;
  private static final int PULL_OR_X = 0x8080;
  private static final int PULL_IF_EMPTY = 0x80E0;

  private static final int PINS = 0;
  private static final int X = 1;
  private static final int Y = 2;
  private static final int NULL = 3;
  private static final int STATUS = 5;
  private static final int ISR = 6;
  private static final int OSR = 7;

  private final Bench bench = Bench.released();

  private static int jmp(int condition, int to) {
    return condition << 5 | to;
  }

  private static int in(int source, int bits) {
    return 0x4000 | source << 5 | (bits & 31);
  }

  private static int out(int to, int bits) {
    return 0x6000 | to << 5 | (bits & 31);
  }

  private static int mov(int to, int operation, int from) {
    return 0xA000 | to << 5 | operation << 3 | from;
  }

  private static int set(int to, int value) {
    return 0xE000 | to << 5 | value;
  }

  /** A program that stays at its end, in machine 0, with a word to send if there is any. */
  private void run(int shift, int[] words, int... program) {
    bench.write(Bench.PIO0 + 0xC8, 1 << 16);
    bench.write(Bench.PIO0 + 0xD0, shift);
    for (int i = 0; i < program.length; i++) {
      bench.write(Bench.PIO0 + 0x48 + 4 * i, program[i]);
    }
    bench.write(Bench.PIO0 + 0x48 + 4 * program.length, jmp(0, program.length));
    for (int word : words) {
      bench.write(TXF, word);
    }
    bench.write(Bench.PIO0 + Bench.SET, 1 << 4 | 1 << 8);
    bench.write(Bench.PIO0 + Bench.SET, 1);
    bench.run(100);
  }

  private static int[] words(int... words) {
    return words;
  }

  /** 78 and 456, or 12 and 345, of 12345678; put in from the right or from the left. */
  @ParameterizedTest
  @CsvSource({
    "true, true, 45678000",
    "true, false, 00078456",
    "false, true, 34512000",
    "false, false, 00012345",
  })
  void bitsGoOutAndIn(boolean outRight, boolean inRight, String isr) {
    run(
        (outRight ? OUT_RIGHT : 0) | (inRight ? IN_RIGHT : 0),
        words(0x12345678),
        PULL,
        out(Y, 8),
        in(Y, 8),
        out(Y, 12),
        in(Y, 12),
        PUSH);
    assertThat(bench.read(RXF)).isEqualTo(Integer.parseUnsignedInt(isr, 16));
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void wholeWordsGoOutAndIn(boolean right) {
    int shift = right ? OUT_RIGHT | IN_RIGHT : 0;
    run(shift, words(0x89ABCDEF), PULL, out(X, 32), in(X, 32), PUSH, in(OSR, 32), PUSH);
    assertThat(bench.read(RXF)).isEqualTo(0x89ABCDEF);
    assertThat(bench.read(RXF)).as("nothing is left of it").isZero();
  }

  /** What is sent to ISR counts as bits in it: 8 and 24 more are a word. */
  @Test
  void registerOfInputTakesWhatGoesOut() {
    run(AUTOPUSH | OUT_RIGHT, words(0xA5), PULL, out(ISR, 8), in(NULL, 24));
    assertThat(bench.read(RXF)).isEqualTo(0xA5000000);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 5, 5, 9", // always
    "1, 0, 5, 9", // !x
    "1, 1, 5, 0",
    "2, 1, 5, 9", // x--, before it is counted down
    "2, 0, 5, 0",
    "3, 5, 0, 9", // !y
    "3, 5, 1, 0",
    "4, 5, 1, 9", // y--
    "4, 5, 0, 0",
    "5, 4, 5, 9", // x != y
    "5, 5, 5, 0",
  })
  void jumpsAreTaken(int condition, int x, int y, int isr) {
    run(
        0,
        words(),
        set(X, x),
        set(Y, y),
        jmp(condition, 6),
        set(Y, 0),
        jmp(0, 7),
        set(Y, 3),
        set(Y, 9),
        mov(ISR, 0, Y),
        PUSH,
        mov(ISR, 0, X),
        PUSH);
    assertThat(bench.read(RXF)).isEqualTo(isr);
    // x-- goes down in any case, past 0 to FFFFFFFF.
    assertThat(bench.read(RXF)).isEqualTo(condition == 2 ? x - 1 : x);
  }

  /** jmp !osre: with a threshold of 8, 7 bits are not all, and 8 are. */
  @ParameterizedTest
  @CsvSource({"7, 9", "8, 0"})
  void jumpIsTakenUntilTheWordIsSent(int bits, int isr) {
    run(
        8 << 25 | OUT_RIGHT,
        words(0xFF),
        PULL,
        out(X, bits),
        jmp(7, 5),
        set(Y, 0),
        jmp(0, 6),
        set(Y, 9),
        mov(ISR, 0, Y),
        PUSH);
    assertThat(bench.read(RXF)).isEqualTo(isr);
  }

  @Test
  void movesTurnOverAndRound() {
    run(
        0,
        words(0x80000001, 0xF0000000),
        PULL,
        mov(X, 2, OSR),
        mov(ISR, 0, X),
        PUSH,
        PULL,
        mov(Y, 2, OSR),
        mov(ISR, 1, Y),
        PUSH,
        mov(ISR, 1, NULL),
        PUSH,
        mov(OSR, 0, Y),
        in(OSR, 32),
        PUSH);
    assertThat(bench.read(RXF)).isEqualTo(0x80000001);
    assertThat(bench.read(RXF)).isEqualTo(~0xF);
    assertThat(bench.read(RXF)).isEqualTo(-1);
    assertThat(bench.read(RXF)).isEqualTo(0xF);
  }

  /** All ones while the queue has fewer words than the level, here 2. */
  @ParameterizedTest
  @CsvSource({"1, -1", "2, 0", "3, 0"})
  void statusOfTheQueue(int count, int isr) {
    bench.write(Bench.PIO0 + 0xCC, 31 << 12 | 2);
    run(0, new int[count], mov(ISR, 0, STATUS), PUSH);
    assertThat(bench.read(RXF)).isEqualTo(isr);
  }

  /** Of the queue of what comes in with bit 4; it has 0, then 2. */
  @Test
  void statusOfTheQueueOfInputs() {
    bench.write(Bench.PIO0 + 0xCC, 31 << 12 | 1 << 4 | 2);
    run(
        0,
        words(1, 1, 1),
        mov(X, 0, STATUS),
        PUSH,
        PUSH,
        mov(Y, 0, STATUS),
        in(X, 32),
        PUSH,
        in(Y, 32),
        PUSH);
    bench.read(RXF);
    bench.read(RXF);
    assertThat(bench.read(RXF)).isEqualTo(-1);
    assertThat(bench.read(RXF)).isZero();
  }

  /** The fifth word is lost, and so is what was shifted in; the flag says so. */
  @Test
  void fullQueueLosesWhatDoesNotWait() {
    run(
        0,
        words(),
        set(X, 3),
        mov(ISR, 0, X),
        PUSH,
        jmp(2, 1),
        set(Y, 21),
        mov(ISR, 0, Y),
        PUSH_LOSES,
        mov(Y, 0, ISR),
        PUSH);
    for (int i = 3; i >= 0; i--) {
      assertThat(bench.read(RXF)).isEqualTo(i);
    }
    assertThat(bench.read(FDEBUG) & 1).isOne();
    bench.run(20);
    assertThat(bench.read(RXF)).as("what waited").isZero();
    assertThat(bench.read(FSTAT) >>> 8 & 1).as("RXEMPTY").isOne();
  }

  /** With a threshold of 12: not after 8 bits, but after 16. */
  @Test
  void pushWaitsForItsThreshold() {
    run(12 << 20, words(), set(X, 7), in(X, 8), PUSH_IF_FULL, in(X, 8), PUSH_IF_FULL, PUSH_IF_FULL);
    assertThat(bench.read(RXF)).isEqualTo(0x707);
    assertThat(bench.read(FSTAT) >>> 8 & 1).isOne();
  }

  /** From an empty queue comes x; a word that is not sent yet stays where only an empty one is. */
  @Test
  void pullsThatDoNotWait() {
    run(
        8 << 25 | OUT_RIGHT,
        words(0xABCD),
        PULL,
        out(Y, 4),
        PULL_IF_EMPTY,
        in(OSR, 32),
        PUSH,
        set(X, 19),
        PULL_OR_X,
        in(OSR, 32),
        PUSH,
        out(Y, 8),
        PULL_IF_EMPTY);
    assertThat(bench.read(RXF)).isEqualTo(0xABC);
    assertThat(bench.read(RXF)).isEqualTo(19);
    assertThat(bench.read(ADDR)).as("waits for a word").isEqualTo(10);
    assertThat(bench.read(FDEBUG) >>> 24 & 1).as("TXSTALL").isOne();
    bench.write(TXF, 1);
    bench.run(10);
    assertThat(bench.read(ADDR)).isEqualTo(11);
  }

  /** Two words of four bits each go out, and come in as one of eight. */
  @Test
  void queuesAreServedByThemselves() {
    int shift = AUTOPULL | AUTOPUSH | OUT_RIGHT | 4 << 25 | 8 << 20;
    run(shift, words(0xFA, 0xFB), out(X, 4), in(X, 4), out(X, 4), in(X, 4), out(X, 4));
    assertThat(bench.read(RXF)).isEqualTo(0xAB);
    assertThat(bench.read(ADDR)).isEqualTo(4);
    bench.write(TXF, 0);
    bench.run(10);
    assertThat(bench.read(ADDR)).isEqualTo(5);
  }

  /** Pins 30, 31 and 0 from base 30 on; what is outside them stays. */
  @Test
  void pinsGoRoundFromTheLastToTheFirst() {
    bench.write(Bench.PIO0 + 0xDC, 3 << 20 | 30);
    run(OUT_RIGHT, words(0xD), PULL, out(PINS, 32), mov(4, 0, NULL));
    assertThat(bench.read(Bench.PIO0 + 0x3C)).as("DBG_PADOUT").isEqualTo(1 << 30 | 1);
  }

  /** set pins and set pindirs: pins 5 to 7; mov pins: those of out, 8 and 9. */
  @Test
  void pinsAreSetAndMoved() {
    bench.write(Bench.PIO0 + 0xDC, 3 << 26 | 5 << 5 | 2 << 20 | 8);
    run(0, words(), set(PINS, 0x1D), set(4, 0x1A), set(X, 6), mov(PINS, 0, X));
    assertThat(bench.read(Bench.PIO0 + 0x3C)).isEqualTo(5 << 5 | 2 << 8);
    assertThat(bench.read(Bench.PIO0 + 0x40)).as("DBG_PADOE").isEqualTo(2 << 5);
  }

  /** out pc and mov pc jump; out exec and mov exec run what they are given. */
  @Test
  void wordsArePlacesAndInstructions() {
    run(
        OUT_RIGHT,
        words(3 | set(X, 17) << 5, set(Y, 11)),
        PULL,
        out(5, 5),
        set(X, 1),
        out(7, 16),
        mov(ISR, 0, X),
        PUSH,
        PULL,
        mov(4, 0, OSR),
        mov(ISR, 0, Y),
        PUSH,
        set(X, 13),
        mov(5, 0, X),
        set(Y, 1),
        mov(ISR, 0, Y),
        PUSH);
    assertThat(bench.read(RXF)).isEqualTo(17);
    assertThat(bench.read(RXF)).isEqualTo(11);
    assertThat(bench.read(RXF)).isEqualTo(11);
  }

  /** From 4 back to 2: x goes down by one a round of three. */
  @Test
  void programsWrap() {
    bench.write(Bench.PIO0 + 0xCC, 4 << 12 | 2 << 7);
    run(0, words(), set(X, 31), set(Y, 0), jmp(2, 3), mov(ISR, 0, X), PUSH_LOSES, jmp(0, 5));
    assertThat(bench.read(RXF)).isEqualTo(30);
    assertThat(bench.read(RXF)).isEqualTo(29);
    assertThat(bench.read(ADDR)).isBetween(2, 4);
  }

  /** irq 2 is raised, irq wait 3 waits until it is cleared, irq clear 2 clears. */
  @Test
  void flagsAreRaisedAndWaitedFor() {
    run(0, words(), 0xC002, 0xC023, 0xC042, set(X, 5), mov(ISR, 0, X), PUSH);
    assertThat(bench.read(IRQ)).isEqualTo(1 << 2 | 1 << 3);
    assertThat(bench.read(ADDR)).isEqualTo(1);
    bench.write(IRQ, 1 << 3);
    bench.run(20);
    assertThat(bench.read(IRQ)).isZero();
    assertThat(bench.read(RXF)).isEqualTo(5);
  }

  /** wait 0 pin and wait 1 gpio; the numbers of pins go from the base on, those of gpio from 0. */
  @Test
  void levelsAreWaitedFor() {
    for (int pin = 9; pin < 12; pin++) {
      bench.write(0x4001C004 + 4 * pin, 0xC6);
    }
    bench.write(Bench.PIO0 + 0xDC, 9 << 15);
    bench.chip.drive(10, true, bench.chip.cycle() + 1);
    bench.run(10);
    // in pins, 3: pins 9 to 11.
    run(0, words(), 0x2000 | 1 << 5 | 1, 0x2080 | 11, in(PINS, 3), PUSH);
    assertThat(bench.read(ADDR)).isZero();
    bench.chip.drive(10, false, bench.chip.cycle() + 5);
    bench.run(50);
    assertThat(bench.read(ADDR)).isOne();
    bench.chip.drive(11, true, bench.chip.cycle() + 5);
    bench.run(50);
    assertThat(bench.read(RXF)).isEqualTo(4);
  }

  /** Flags of a number relative to the machine's: irq 2 rel of machine 3 is flag (2 + 3) mod 4. */
  @Test
  void flagsAreRelativeToTheMachine() {
    int machine3 = 3 * 0x18;
    bench.write(Bench.PIO0 + 0xC8 + machine3, 1 << 16);
    bench.write(Bench.PIO0 + 0x48, 0xC012);
    bench.write(Bench.PIO0 + 0x4C, 0xC016);
    bench.write(Bench.PIO0 + 0x50, jmp(0, 2));
    bench.write(Bench.PIO0 + Bench.SET, 1 << 7 | 1 << 11);
    bench.write(Bench.PIO0 + Bench.SET, 1 << 3);
    bench.run(20);
    assertThat(bench.read(IRQ)).isEqualTo(1 << 1 | 1 << 5);
  }

  /** Optional side-set: one bit enables, the other is pin 6; what has no enable leaves it. */
  @Test
  void sidesAreSetWhereTheyAreEnabled() {
    bench.write(Bench.PIO0 + 0xDC, 2 << 29 | 6 << 10);
    bench.write(Bench.PIO0 + 0xCC, 1 << 30 | 31 << 12);
    run(0, words(), set(X, 0) | 3 << 11, set(X, 0) | 1 << 11 | 7 << 8);
    assertThat(bench.read(Bench.PIO0 + 0x3C)).isEqualTo(1 << 6);
    bench.write(INSTR, set(X, 0) | 2 << 11);
    assertThat(bench.read(Bench.PIO0 + 0x3C)).isZero();
  }

  /** A forced instruction runs at once; a forced jump goes on from there. */
  @Test
  void instructionsAreForced() {
    run(0, words(), set(X, 1), jmp(0, 1), mov(ISR, 0, X), PUSH, jmp(0, 4));
    assertThat(bench.read(ADDR)).isOne();
    bench.write(INSTR, set(X, 23));
    bench.write(INSTR, jmp(0, 2));
    bench.run(20);
    assertThat(bench.read(RXF)).isEqualTo(23);
    assertThat(bench.read(ADDR)).isEqualTo(4);
    // One that waits stays as the instruction until it is done.
    bench.write(INSTR, PULL);
    bench.run(20);
    assertThat(bench.read(Bench.PIO0 + 0xCC) >>> 31).as("EXEC_STALLED").isOne();
    bench.write(TXF, 3);
    bench.run(20);
    assertThat(bench.read(Bench.PIO0 + 0xCC) >>> 31).isZero();
  }

  /** Encodings that the datasheet reserves. */
  @ParameterizedTest
  @ValueSource(
      ints = {
        0x2060,
        0x4080,
        0x40A0,
        0xA018 | 1 << 5,
        0xA004 | 1 << 5,
        0xA060,
        0xE060,
        0xE0A0,
        0xC080,
        0xC008
      })
  void reservedInstructionsFault(int instruction) {
    assertThatThrownBy(() -> run(0, words(), instruction))
        .isInstanceOf(Rp2040Fault.class)
        .hasMessageContaining("is not known");
  }
}
