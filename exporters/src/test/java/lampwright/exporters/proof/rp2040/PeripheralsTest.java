package lampwright.exporters.proof.rp2040;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import lampwright.engine.time.Ratio;
import org.junit.jupiter.api.Test;

/** Times of clocks, timer, PIO, DMA and PWM, reckoned by hand from the datasheet's rules. */
class PeripheralsTest {
  private static final int SIO_GPIO_IN = 0xD0000004;

  private static final int TIMER = 0x40054000;

  /** Cycles of a pin's changes from its first rise on. */
  private static List<Long> changes(Bench bench, int pin) {
    List<Long> cycles =
        bench.edges.stream()
            .map(edge -> edge.split(" "))
            .filter(edge -> edge[1].equals(Integer.toString(pin)))
            .dropWhile(edge -> !edge[2].equals("HIGH"))
            .map(edge -> Long.parseLong(edge[0]))
            .toList();
    return cycles.stream().map(cycle -> cycle - cycles.get(0)).toList();
  }

  /** 12 MHz x 125 / 6 / 2. */
  @Test
  void clocksGiveWhatIsSetUp() {
    Bench bench = Bench.released();
    assertEquals(Ratio.of(6_500_000), bench.chip.systemHertz());
    bench.clocks();
    assertEquals(Ratio.of(125_000_000), bench.chip.systemHertz());
    assertEquals(2, bench.read(0x40008044));
    bench.write(0x40008040, 2 << 8);
    assertEquals(Ratio.of(62_500_000), bench.chip.systemHertz());
  }

  @Test
  void timerCountsMicrosecondsOfTheCrystalWhateverTheSystemClockIs() {
    Bench bench = Bench.released();
    bench.clocks();
    int start = bench.read(TIMER + 0x28);
    bench.run(125_000);
    assertThat(bench.read(TIMER + 0x28) - start).isBetween(1000, 1001);
    bench.write(0x40008040, 2 << 8);
    start = bench.read(TIMER + 0x28);
    bench.run(125_000);
    assertThat(bench.read(TIMER + 0x28) - start).isBetween(2000, 2001);
  }

  @Test
  void alarmComesInItsMicrosecond() {
    Bench bench = Bench.released();
    bench.clocks();
    bench.write(TIMER + 0x38, 1);
    int due = bench.read(TIMER + 0x28) + 50;
    bench.write(TIMER + 0x10, due);
    assertEquals(1, bench.read(TIMER + 0x20));
    while (bench.read(TIMER + 0x34) == 0) {
      assertThat(bench.read(TIMER + 0x28)).isLessThanOrEqualTo(due);
      bench.run(1);
    }
    assertEquals(due, bench.read(TIMER + 0x28));
    assertEquals(0, bench.read(TIMER + 0x20));
    assertEquals(1, bench.read(0xE000E200));
    bench.write(TIMER + 0x34, 1);
    bench.write(0xE000E280, 1);
    assertEquals(0, bench.read(0xE000E200));
  }

  private static void program(Bench bench, int... instructions) {
    for (int i = 0; i < instructions.length; i++) {
      bench.write(Bench.PIO0 + 0x48 + 4 * i, instructions[i]);
    }
  }

  private static void machine(Bench bench, int divider, int wrap, int shift, int pins) {
    bench.write(Bench.PIO0 + 0xC8, divider);
    bench.write(Bench.PIO0 + 0xCC, wrap << 12);
    bench.write(Bench.PIO0 + 0xD0, shift);
    bench.write(Bench.PIO0 + 0xDC, pins);
    bench.write(Bench.PIO0 + Bench.SET, 1 << 4 | 1 << 8);
    bench.write(Bench.PIO0 + 0xD8, 0xE081);
    bench.pin(3, 6);
  }

  /** A divider of 2.5: the n-th tick is at floor(2.5 n); 4 ticks high, 2 low. */
  @Test
  void stateMachineKeepsDividerFractionAndDelays() {
    Bench bench = Bench.released();
    program(bench, 0xE301, 0xE100);
    machine(bench, 2 << 16 | 128 << 8, 1, 0x000C0000, 1 << 26 | 3 << 5);
    bench.write(Bench.PIO0 + Bench.SET, 1);
    bench.run(60);
    assertThat(changes(bench, 3)).startsWith(0L, 10L, 15L, 25L, 30L, 40L, 45L);
  }

  @Test
  void fractionThatDoesNotDivideMovesEdgesByACycle() {
    Bench bench = Bench.released();
    program(bench, 0xE001, 0xE000);
    machine(bench, 1 << 16 | 64 << 8, 1, 0x000C0000, 1 << 26 | 3 << 5);
    bench.write(Bench.PIO0 + Bench.SET, 1);
    bench.run(40);
    List<Long> wanted = IntStream.rangeClosed(0, 20).mapToObj(n -> n * 5L / 4).toList();
    assertThat(changes(bench, 3)).startsWith(wanted.toArray(Long[]::new));
  }

  /**
   * The line of a chain, as FACTS' first trial: out x, 1 side 0 [7]; jmp !x side 1 [7]; jmp side 1
   * [6]; nop side 0 [6], in steps of 5 cycles: 1 is 15 steps high and 8 low, 0 is 8 and 15. The
   * byte 0xA5 by DMA; the line then rests low.
   */
  @Test
  void byteBecomesBitsAndTheLineRests() {
    Bench bench = Bench.released();
    program(bench, 0x6721, 0x1723, 0x1600, 0xA642);
    machine(bench, 5 << 16, 3, 1 << 30 | 8 << 25 | 1 << 17, 1 << 29 | 1 << 26 | 3 << 10 | 3 << 5);
    bench.write(Bench.PIO0 + Bench.SET, 1);
    bench.write(0x20000000, 0xA5);
    bench.write(Bench.DMA, 0x20000000);
    bench.write(Bench.DMA + 4, Bench.PIO0 + 0x10);
    bench.write(Bench.DMA + 8, 1);
    bench.write(Bench.DMA + 12, 1 << 21 | 1 << 4 | 1);
    bench.run(2000);
    List<Long> wanted = new java.util.ArrayList<>();
    long at = 0;
    for (char bit : "10100101".toCharArray()) {
      wanted.add(at);
      wanted.add(at + (bit == '1' ? 15L : 8L) * 5);
      at += 23 * 5;
    }
    assertEquals(wanted, changes(bench, 3));
    assertEquals(0, bench.read(Bench.DMA + 12) & 1 << 24);
    // TXSTALL of machine 0: it waits for the next byte.
    assertEquals(1 << 24, bench.read(Bench.PIO0 + 8) & 1 << 24);
  }

  @Test
  void joinedQueueHoldsEightWords() {
    Bench bench = Bench.released();
    bench.write(Bench.PIO0 + 0xD0, 1 << 30);
    for (int i = 0; i < 8; i++) {
      assertEquals(i, bench.read(Bench.PIO0 + 12) & 15);
      bench.write(Bench.PIO0 + 0x10, i);
    }
    assertEquals(1 << 16, bench.read(Bench.PIO0 + 4) & 1 << 16);
    bench.write(Bench.PIO0 + 0x10, 8);
    assertEquals(1 << 16, bench.read(Bench.PIO0 + 8));
  }

  /** in x, 8 pushed by itself at 32 bits: words of what x was set to. */
  @Test
  void wordsAreShiftedInAndPushed() {
    Bench bench = Bench.released();
    program(bench, 0xE035, 0x4028, 0x4028, 0xA0C9, 0x8020, 0x0005);
    machine(bench, 1 << 16, 31, 0, 0);
    bench.write(Bench.PIO0 + 0xD8, 0);
    bench.write(Bench.PIO0 + Bench.SET, 1);
    bench.run(20);
    // mov isr, !x pushes the complement of 21.
    assertEquals(~21, bench.read(Bench.PIO0 + 0x20));
  }

  @Test
  void machinesMeetByFlags() {
    Bench bench = Bench.released();
    // wait 1 irq 4; set pins, 1; jmp 2
    program(bench, 0x20C4, 0xE001, 0x0002);
    machine(bench, 1 << 16, 31, 0, 1 << 26 | 3 << 5);
    bench.write(Bench.PIO0 + 0xD8, 0);
    bench.write(Bench.PIO0 + Bench.SET, 1);
    bench.run(50);
    assertThat(bench.edges).noneMatch(edge -> edge.endsWith("HIGH"));
    bench.write(Bench.PIO0 + 0x34, 1 << 4);
    bench.run(10);
    assertThat(bench.edges).anyMatch(edge -> edge.endsWith("3 HIGH"));
    assertEquals(0, bench.read(Bench.PIO0 + 0x30));
  }

  @Test
  void channelsChainAndRing() {
    Bench bench = Bench.released();
    for (int i = 0; i < 4; i++) {
      bench.write(0x20000000 + 4 * i, 0x11111111 * (i + 1));
    }
    // Channel 1: 6 half words from a ring of 8 bytes; started by channel 0, which moves one word.
    bench.write(Bench.DMA + 0x40, 0x20000000);
    bench.write(Bench.DMA + 0x44, 0x20000100);
    bench.write(Bench.DMA + 0x48, 6);
    bench.write(Bench.DMA + 0x50, 63 << 15 | 1 << 11 | 3 << 6 | 1 << 5 | 1 << 4 | 1 << 2 | 1);
    bench.write(Bench.DMA, 0x2000000C);
    bench.write(Bench.DMA + 4, 0x20000200);
    bench.write(Bench.DMA + 8, 1);
    bench.write(Bench.DMA + 12, 63 << 15 | 1 << 11 | 2 << 2 | 1);
    bench.run(40);
    assertEquals(0x44444444, bench.read(0x20000200));
    assertEquals(0x11111111, bench.read(0x20000100));
    assertEquals(0x22222222, bench.read(0x20000104));
    assertEquals(0x11111111, bench.read(0x20000108));
    assertEquals(3, bench.read(Bench.DMA + 0x400));
  }

  private static Bench pwm(int divider) {
    Bench bench = Bench.released();
    bench.write(Bench.PWM + 0x14 + 4, divider);
    bench.write(Bench.PWM + 0x14 + 0x10, 254);
    bench.write(Bench.PWM + 0x14 + 0xC, 100);
    bench.write(Bench.PWM + 0x14, 1);
    bench.pin(2, 4);
    return bench;
  }

  /** Slice 1 is pins 2 and 3; 100 of 255 counts of 16 cycles. */
  @Test
  void pulsesHaveTheWidthThatIsSetFromTheNextPeriodOn() {
    Bench bench = pwm(16 << 4);
    bench.run(255 * 16 + 50);
    bench.write(Bench.PWM + 0x14 + 0xC, 7);
    bench.run(3 * 255 * 16);
    long from = changes(bench, 2).get(1) - 1600;
    assertThat(changes(bench, 2).stream().map(cycle -> cycle - from).toList())
        .containsSubsequence(1600L, 4080L, 5680L, 8160L, 8160L + 7 * 16, 12240L, 12240L + 7 * 16);
  }

  @Test
  void dutiesOfNothingAndAllHaveNoEdges() {
    Bench bench = pwm(16);
    bench.write(Bench.PWM + 0x14 + 0xC, 0);
    bench.run(600);
    bench.edges.clear();
    bench.run(2000);
    assertThat(bench.edges).isEmpty();
    bench.write(Bench.PWM + 0x14 + 0xC, 255);
    bench.run(300);
    assertThat(bench.edges).hasSize(1).allMatch(edge -> edge.endsWith("2 HIGH"));
    bench.run(2000);
    assertThat(bench.edges).hasSize(1);
  }

  /** A divider of 1 3/16: 255 counts last 302.8 cycles, so 16 periods last 4,845 exactly. */
  @Test
  void fractionOfADividerIsKeptFromPeriodToPeriod() {
    Bench bench = pwm(1 << 4 | 3);
    bench.run(20_000);
    List<Long> changes = changes(bench, 2);
    assertEquals(changes.get(2) + 4845, changes.get(2 + 32));
  }

  @Test
  void pinsOfTheCoreFollowItsPort() {
    Bench bench = Bench.released();
    bench.pin(5, 5);
    bench.write(0xD0000024, 1 << 5);
    bench.write(0xD0000014, 1 << 5);
    bench.write(0xD000001C, 1 << 5);
    assertThat(bench.edges.stream().map(edge -> edge.substring(edge.indexOf(' ') + 1)))
        .containsExactly("5 LOW", "5 HIGH", "5 LOW");
  }

  @Test
  void interruptRunsItsHandlerAndComesBack() {
    // SysTick every 100 cycles; its handler counts in r7; the loop counts in r6.
    Thumb code = new Thumb(0x20000000);
    code.op(0x0000, 0x2004, 0x0101, 0x2000);
    for (int i = 2; i < 15; i++) {
      code.op(0, 0);
    }
    code.op(0x0081, 0x2000);
    while (code.here() < 0x20000080) {
      code.op(0xBF00);
    }
    code.op(0x3701, 0x4770);
    Bench bench = new Bench();
    bench.chip.bus().load(0x20000000, code.bytes());
    Thumb loop = new Thumb(0x20000100).movs(6, 0).movs(7, 0);
    int again = loop.here();
    loop.op(0x3601).b(again);
    bench.chip.bus().load(0x20000100, loop.bytes());
    bench.chip.cpu().start(0x20000100, 0x20040000);
    bench.write(0xE000ED08, 0x20000000);
    bench.write(0xE000E014, 99);
    bench.write(0xE000E018, 0);
    bench.write(0xE000E010, 7);
    bench.run(1050);
    assertEquals(10, bench.chip.cpu().register(7));
    assertEquals(0x20040000, bench.chip.cpu().register(13));
    assertThat(bench.chip.cpu().register(6)).isBetween(200, 330);
  }

  @Test
  void coreSleepsUntilAnInterruptThoughItIsMasked() {
    Bench bench = Bench.released();
    bench.clocks();
    bench.write(TIMER + 0x38, 1);
    bench.write(0xE000E100, 1);
    Thumb code = new Thumb(0x20000100).op(0xB672, 0xBF30).movs(7, 9).b(0x20000106);
    bench.chip.bus().load(0x20000100, code.bytes());
    bench.chip.cpu().start(0x20000100, 0x20040000);
    bench.write(TIMER + 0x10, bench.read(TIMER + 0x28) + 100);
    long asleep = bench.chip.cyclesAsleep();
    bench.run(200 * 125);
    assertEquals(9, bench.chip.cpu().register(7));
    assertThat(bench.chip.cyclesAsleep() - asleep).isBetween(99 * 125L - 20, 100 * 125L);
  }

  /**
   * Levels from outside come at their cycle, several at once too, and to the inputs that are on.
   */
  @Test
  void levelsFromOutsideComeAtTheirCycles() {
    Bench bench = Bench.released();
    for (int pin = 2; pin < 12; pin++) {
      bench.write(0x4001C004 + 4 * pin, pin == 11 ? 0x82 : 0xC2);
      bench.chip.drive(pin, true, 1000);
    }
    bench.chip.drive(3, false, 1005);
    bench.run(1000 - bench.chip.cycle());
    assertEquals(0, bench.read(SIO_GPIO_IN));
    bench.run(4);
    // GP11 has its input off.
    assertEquals(0x7FC, bench.read(SIO_GPIO_IN));
    bench.run(6);
    assertEquals(0x7F4, bench.read(SIO_GPIO_IN));
  }

  /**
   * The program by which firmware measures pulses, at 40 ns a step: a pulse of so many microseconds
   * has five counts for each and one more, whenever it comes.
   */
  @Test
  void pulsesAreMeasuredByAStateMachine() {
    Bench bench = Bench.released();
    int[] program = {0x2020, 0xA02B, 0x20A0, 0x0145, 0x0000, 0x02C3, 0xA0C9, 0x8000};
    for (int i = 0; i < program.length; i++) {
      bench.write(Bench.PIO0 + 0x48 + 4 * i, program[i]);
    }
    bench.write(0x4001C004 + 4 * 9, 0xC6);
    bench.write(Bench.PIO0 + 0xC8, 5 << 16);
    bench.write(Bench.PIO0 + 0xCC, 9 << 24 | 7 << 12);
    bench.write(Bench.PIO0 + 0xD0, 1 << 31);
    bench.write(Bench.PIO0 + 0xDC, 9 << 15);
    bench.write(Bench.PIO0 + Bench.SET, 0x10 | 0x100);
    bench.write(Bench.PIO0 + Bench.SET, 1);
    long at = bench.chip.cycle() + 100;
    int[] widths = {800, 1500, 1501, 2200, 10, 1};
    for (int i = 0; i < widths.length; i++) {
      bench.chip.drive(9, true, at + i);
      at += i + 125L * widths[i];
      bench.chip.drive(9, false, at);
      at += 1000;
    }
    bench.run(at + 100 - bench.chip.cycle());
    for (int width : widths) {
      assertEquals(5 * width + 1, bench.read(Bench.PIO0 + 0x20));
    }
    assertEquals(1 << 8, bench.read(Bench.PIO0 + 4) & 1 << 8);
  }
}
