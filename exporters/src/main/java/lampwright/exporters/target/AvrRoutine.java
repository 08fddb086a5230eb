package lampwright.exporters.target;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A routine in AVR assembly that sends the bytes of a chain: the eight bits of a byte one after
 * another, each filled up to the cycle, and the work between bytes (fetch the next, count) in what
 * is left over. Every bit of a chain, the last of a byte and of a pixel too, has the same length.
 *
 * <pre>
 *        t = 0            T0H               T1H                 bit
 *        __________________ _ _ _ _ _ _ _ _ _
 *   ____|                  |_ _ _ _ _ _ _ _ _|__________________|
 *        rise   early   0 falls    late    1 falls   window  low    next rise
 * </pre>
 *
 * Interrupts are let in once in each of the bits 7 to 1, while the line is low. The instruction
 * after the one that enables them is always done first (datasheet, "Reset and Interrupt Handling"),
 * and after an interrupt routine one instruction of ours comes before the next, so one gap holds
 * one routine.
 */
final class AvrRoutine {
  private static final int FIRST_BIT = 7;
  private static final String FLIP = "st Z, r18";
  private static final String LEAVE = "breq 2f";

  /** Free cycles at one place of one bit, filled with work and then with waiting. */
  private static final class Slot {
    private final List<String> work = new ArrayList<>();
    private int cycles;

    private Slot(int cycles) {
      this.cycles = cycles;
    }

    private boolean take(String instruction, int cost) {
      if (cycles < cost) {
        return false;
      }
      work.add(instruction);
      cycles -= cost;
      return true;
    }
  }

  /** The free places of one bit, in order of time. */
  private record Bit(int number, Slot early, Slot late, Slot window, Slot low) {
    private List<Slot> slots() {
      return List.of(early, late, window, low);
    }
  }

  private final AvrWave wave;
  private final boolean flips;
  private final List<Bit> bits = new ArrayList<>();
  private boolean leavesEarly;
  private final boolean fits;

  private AvrRoutine(AvrWave wave) {
    this.wave = wave;
    this.flips = wave.way() == AvrWave.Way.FLIPS_PIN;
    for (int bit = FIRST_BIT; bit >= 0; bit--) {
      bits.add(flips ? flipped(bit) : written(bit));
    }
    this.fits = enoughTime() && workFits();
  }

  /** Whether a routine can keep these times. */
  static boolean fits(AvrWave wave) {
    return new AvrRoutine(wave).fits;
  }

  /**
   * The routine for these times.
   *
   * @throws IllegalArgumentException if there is none
   */
  static AvrRoutine of(AvrWave wave) {
    AvrRoutine routine = new AvrRoutine(wave);
    if (!routine.fits) {
      throw new IllegalArgumentException(
          "wave: " + wave + ": must have times that fit the routine");
    }
    return routine;
  }

  // Fixed costs: st 2, sbrs or sbrc 1 and 2 if it skips, out 1, cli 1, rjmp 2.
  private Bit flipped(int bit) {
    int early = wave.t0h() - 3;
    int late = wave.t1h() - wave.t0h() - 2;
    return bit == 0
        ? new Bit(bit, new Slot(early), new Slot(late), new Slot(0), new Slot(wave.t1l() - 4))
        : new Bit(bit, new Slot(early), new Slot(late), new Slot(1), new Slot(wave.t1l() - 5));
  }

  private Bit written(int bit) {
    int early = wave.t0h() - 2;
    int late = wave.t1h() - wave.t0h();
    return bit == 0
        ? new Bit(bit, new Slot(early), new Slot(late - 1), new Slot(0), new Slot(wave.t1l() - 3))
        : new Bit(bit, new Slot(early), new Slot(late - 2), new Slot(0), new Slot(wave.t1l() - 2));
  }

  private boolean enoughTime() {
    return bits.stream().flatMap(bit -> bit.slots().stream()).allMatch(slot -> slot.cycles >= 0);
  }

  private boolean workFits() {
    Bit last = bits.get(FIRST_BIT);
    Bit beforeLast = bits.get(FIRST_BIT - 1);
    List<Slot> beforeLastBit =
        bits.stream().limit(FIRST_BIT).flatMap(bit -> bit.slots().stream()).toList();
    // Enabling interrupts writes all flags, so the count comes after the last of that.
    List<Slot> afterFlags =
        List.of(beforeLast.window, beforeLast.low, last.early, last.late, last.low);
    return place("ld r25, X+", 2, beforeLastBit) && placeCount(afterFlags) && placeEnd(last);
  }

  private static boolean place(String instruction, int cost, List<Slot> places) {
    return places.stream().anyMatch(slot -> slot.take(instruction, cost));
  }

  private static boolean placeCount(List<Slot> places) {
    for (int i = 0; i < places.size(); i++) {
      if (places.get(i).take("subi r22, 1", 1)) {
        return place("sbci r23, 0", 1, places.subList(i, places.size()));
      }
    }
    return false;
  }

  /**
   * After the last byte it leaves, best while the line is low. Where that is too short it leaves
   * before the falling edge of a 1, by a branch that takes one cycle longer than going on. The next
   * byte must not take the place of bit 0 before that has been looked at for the last time.
   */
  private boolean placeEnd(Bit last) {
    int late = last.late.cycles;
    int low = last.low.cycles;
    boolean movesLow = flips || late == 0;
    boolean inLow = movesLow ? low >= 2 : low >= 1;
    boolean inLate = flips ? late >= 2 && low >= 1 : late >= 2;
    Slot leave = inLow ? last.low : last.late;
    Slot move = movesLow ? last.low : last.late;
    leavesEarly = !inLow;
    return (inLow || inLate) && leave.take(LEAVE, 1) && move.take("mov r24, r25", 1);
  }

  /** Words of program memory that it takes. */
  int words() {
    int words = 0;
    for (String line : text("name", "PORTB").split("\n", -1)) {
      if (line.startsWith("\t") && !line.startsWith("\t.")) {
        words++;
      }
    }
    return words;
  }

  /**
   * The routine.
   *
   * @param name of the function
   * @param port the register of the port, such as {@code PORTB}, where it writes the whole port
   */
  String text(String name, String port) {
    StringBuilder text = new StringBuilder();
    text.append("\t.global ").append(name).append("\n\t.type ").append(name);
    text.append(", @function\n").append(name).append(":\n");
    line(text, "movw XL, r24", "the bytes");
    if (flips) {
      line(text, "movw ZL, r20", "the PIN register");
    }
    line(text, "ld r24, X+", "");
    text.append("1:\n");
    for (Bit bit : bits) {
      bit(text, bit, port);
    }
    line(text, "rjmp 1b", "2 cycles, then the next byte");
    text.append("2:\n");
    if (leavesEarly) {
      Slot late = bits.get(FIRST_BIT).late;
      int rest = late.cycles + late.work.size() - 1 - late.work.indexOf(LEAVE);
      wait(text, rest - 1);
      fallOfOne(text, 0, port);
    }
    line(text, "ret", "");
    return text.append("\t.size ").append(name).append(", .-").append(name).append('\n').toString();
  }

  private void bit(StringBuilder text, Bit bit, String port) {
    line(text, flips ? FLIP : out(port, "r20"), "bit " + bit.number + " rises: t = 0");
    fill(text, bit.early);
    line(text, "sbrs r24, " + bit.number, "a 1 stays high");
    line(text, flips ? FLIP : out(port, "r18"), "a 0 falls: t = " + wave.t0h());
    fill(text, bit.late);
    boolean window = bit.number > 0;
    if (window && !flips) {
      line(text, "LET_IN", "holds after the next instruction");
    }
    fallOfOne(text, bit.number, port);
    if (window && flips) {
      line(text, "LET_IN", "holds after the next instruction");
      fill(text, bit.window);
    }
    if (window) {
      line(text, "HOLD_OFF", "");
    }
    fill(text, bit.low);
  }

  private void fallOfOne(StringBuilder text, int bit, String port) {
    if (flips) {
      line(text, "sbrc r24, " + bit, "");
    }
    line(text, flips ? FLIP : out(port, "r18"), "a 1 falls: t = " + wave.t1h());
  }

  private static String out(String port, String register) {
    return "out _SFR_IO_ADDR(" + port + "), " + register;
  }

  private static void fill(StringBuilder text, Slot slot) {
    slot.work.forEach(instruction -> line(text, instruction, ""));
    wait(text, slot.cycles);
  }

  private static void wait(StringBuilder text, int cycles) {
    for (int left = cycles; left > 0; left -= 2) {
      line(text, left > 1 ? "rjmp .+0" : "nop", left > 1 ? "2 cycles" : "");
    }
  }

  private static void line(StringBuilder text, String instruction, String comment) {
    text.append('\t');
    text.append(
        comment.isEmpty()
            ? instruction
            : String.format(Locale.ROOT, "%-28s /* %s */", instruction, comment));
    text.append('\n');
  }
}
