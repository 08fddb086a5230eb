package lampwright.exporters.proof;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Reads a chain's data line as its pixels do, and compares times and bits. */
final class ChainJudge {
  private static final double SLACK_NS = 0.001;

  private final int number;
  private final ChainLine line;
  private final ExpectedFrames expected;
  private final Faults faults;
  private final @Nullable FrameClock clock;
  private final double nsPerCycle;
  private final Span[] high;
  private final Span[] low;
  private final Span period;
  private final double threshold;
  private final byte[] frame;

  private boolean hasBit;
  private boolean begun;
  private int value;
  private long rise;
  private long fall;
  private long bits;
  private long frames;
  private long framesWrong;
  private long bitsWrong;
  private long outside;
  private long leastReset;

  /**
   * A chain's judge.
   *
   * @param clock is told of every frame; none for all chains but the first
   */
  ChainJudge(
      int number,
      ChainLine line,
      ExpectedFrames expected,
      Faults faults,
      @Nullable FrameClock clock,
      double nsPerCycle) {
    this.number = number;
    this.line = line;
    this.expected = expected;
    this.faults = faults;
    this.clock = clock;
    this.nsPerCycle = nsPerCycle;
    high =
        new Span[] {
          new Span(line.limits().t0h(), nsPerCycle), new Span(line.limits().t1h(), nsPerCycle)
        };
    low =
        new Span[] {
          new Span(line.limits().t0l(), nsPerCycle), new Span(line.limits().t1l(), nsPerCycle)
        };
    period = new Span(line.limits().bit(), nsPerCycle);
    threshold = (line.limits().t0h().greatestNs() + line.limits().t1h().leastNs()) / 2;
    frame = new byte[line.bytes()];
  }

  long frames() {
    return frames;
  }

  ChainLine line() {
    return line;
  }

  long framesWrong() {
    return framesWrong;
  }

  long bitsCompared() {
    return frames * line.bytes() * 8;
  }

  long bitsWrong() {
    return bitsWrong;
  }

  long outside() {
    return outside;
  }

  /** The line changes; only changes come. */
  void changed(boolean up, long cycle) {
    if (up) {
      begun = true;
      rising(cycle);
    } else if (begun) {
      falling(cycle);
    }
  }

  private void rising(long cycle) {
    boolean starts = true;
    if (hasBit) {
      long gap = cycle - fall;
      if (gap * nsPerCycle >= line.resetNs() - SLACK_NS) {
        leastReset = leastReset == 0 ? gap : Math.min(leastReset, gap);
        endFrame();
      } else {
        starts = false;
        boolean inside = low[value].take(gap);
        inside &= period.take(cycle - rise);
        if (!inside) {
          outside(value == 1 ? "T1L" : "T0L", gap);
        }
      }
    }
    if (starts) {
      bits = 0;
      Arrays.fill(frame, (byte) 0);
      if (clock != null) {
        clock.frame(cycle);
      }
    }
    rise = cycle;
  }

  private void falling(long cycle) {
    long time = cycle - rise;
    value = time * nsPerCycle > threshold ? 1 : 0;
    hasBit = true;
    fall = cycle;
    if (!high[value].take(time)) {
      outside(value == 1 ? "T1H" : "T0H", time);
    }
    if (bits < line.bytes() * 8L) {
      int at = (int) (bits / 8);
      frame[at] = (byte) (frame[at] | value << (7 - bits % 8));
    }
    bits++;
  }

  private void outside(String what, long cycles) {
    outside++;
    faults.add(
        "chain %d, frame %d, bit %d: %s %.1f ns", number, frames, bits, what, cycles * nsPerCycle);
  }

  private void endFrame() {
    long sent = frames++;
    if (bits != line.bytes() * 8L) {
      faults.add("chain %d, frame %d: %d bits, expected %d", number, sent, bits, line.bytes() * 8L);
      framesWrong++;
      bitsWrong += line.bytes() * 8L;
      return;
    }
    long before = bitsWrong;
    for (int i = 0; i < line.bytes(); i++) {
      int is = frame[i] & 0xFF;
      int wanted = expected.at(sent, line.at() + i);
      if (is != wanted) {
        if (bitsWrong == before) {
          faults.add(
              "chain %d, frame %d: byte %d is %02X, expected %02X", number, sent, i, is, wanted);
        }
        bitsWrong += Integer.bitCount(is ^ wanted);
      }
    }
    framesWrong += bitsWrong != before ? 1 : 0;
  }

  void report(Figures figures) {
    String place = "/chains/" + number;
    figures.put(place + "/pin", "GP" + line.gpio());
    figures.put(place + "/framesCompared", frames);
    figures.put(place + "/framesWrong", framesWrong);
    figures.put(place + "/bitsCompared", bitsCompared());
    figures.put(place + "/bitsWrong", bitsWrong);
    figures.put(place + "/bitsOutsideLimits", outside);
    figures.put(place + "/leastResetUs", leastReset * nsPerCycle / 1000);
    high[0].report(figures, place + "/t0h");
    low[0].report(figures, place + "/t0l");
    high[1].report(figures, place + "/t1h");
    low[1].report(figures, place + "/t1l");
    period.report(figures, place + "/period");
  }
}
