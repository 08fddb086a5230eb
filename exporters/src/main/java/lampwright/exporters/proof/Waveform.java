package lampwright.exporters.proof;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;

/** The signals of chains as a value change dump (IEEE 1364), with pauses cut short. */
final class Waveform {
  private static final double LEAD_NS = 10_000;
  private static final double IDLE_NS = 400_000;

  private final Writer out;
  private final double nsPerCycle;
  private final long idleCycles;
  private final int chains;
  private boolean any;
  private long cut;
  private long last;

  /**
   * Begins a dump.
   *
   * @param pins names of the chains' pins
   */
  Waveform(Writer out, List<String> pins, double nsPerCycle) {
    this.out = out;
    this.nsPerCycle = nsPerCycle;
    this.idleCycles = (long) (IDLE_NS / nsPerCycle);
    this.chains = pins.size();
    write("$timescale 1 ns $end\n$scope module chains $end\n");
    for (int i = 0; i < chains; i++) {
      write("$var wire 1 " + sign(i) + " " + pins.get(i) + " $end\n");
    }
    write("$upscope $end\n$enddefinitions $end\n#0\n");
    allLow();
  }

  private static char sign(int chain) {
    return (char) ('!' + chain);
  }

  private void allLow() {
    for (int i = 0; i < chains; i++) {
      write("0" + sign(i) + "\n");
    }
  }

  void change(int chain, boolean level, long cycle) {
    if (!any) {
      // A little idle time first: readers need a level to see the first edge from.
      any = true;
      cut = cycle - (long) (LEAD_NS / nsPerCycle);
      last = cycle;
    }
    if (cycle - last > idleCycles) {
      cut += cycle - last - idleCycles;
    }
    last = cycle;
    // To whole ns, outward: a reader then never finds a high time shorter than it is.
    long picoseconds = Math.round((cycle - cut) * nsPerCycle * 1000);
    write(
        "#"
            + (picoseconds + (level ? 0 : 999)) / 1000
            + "\n"
            + (level ? 1 : 0)
            + sign(chain)
            + "\n");
  }

  /** Ends with the last reset, so that readers end the last frame. */
  void end() {
    write("#" + Math.round((last - cut + idleCycles) * nsPerCycle) + "\n");
    allLow();
  }

  private void write(String text) {
    try {
      out.write(text);
    } catch (IOException full) {
      throw new UncheckedIOException(full);
    }
  }
}
