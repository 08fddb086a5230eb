package lampwright.exporters.firmware;

import static lampwright.exporters.firmware.ReadmeFile.number;

import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.exporters.target.FrameClock;
import lampwright.exporters.target.Line;
import lampwright.exporters.target.SentTimes;
import lampwright.exporters.target.Target;

/** What interrupts and the frame clock do on this controller with these chains. */
final class ReadmeInterrupts {
  private static final double NS_PER_US = 1000;

  /** From one end of the stick to the other, 1,000 to 2,000 us (common practice). */
  private static final double STICK_TRAVEL_US = 1000;

  /** Cycles that a controller takes into an interrupt routine and out of it (datasheets). */
  private static final int INTERRUPT_CYCLES = 10;

  /** Half the reset: a rule of thumb, as no datasheet says how long a gap may be. */
  private static final double SHARE_OF_RESET = 0.5;

  private final Rig rig;
  private final Target target;
  private final List<Line.Sent> lines;
  private final double megahertz;

  ReadmeInterrupts(Rig rig, Target target) {
    this.rig = rig;
    this.target = target;
    this.lines = rig.chains().stream().map(target::line).map(line -> (Line.Sent) line).toList();
    this.megahertz = target.hertz().getAsInt() / 1e6;
  }

  Map<String, String> words() {
    double bit = longest(SentTimes::bitNs);
    double low = longest(SentTimes::t0lNs);
    return Map.ofEntries(
        Map.entry("HELD", number(2 * bit / NS_PER_US, 1)),
        Map.entry("GAP", number(low / NS_PER_US + INTERRUPT_CYCLES / megahertz, 1)),
        Map.entry("PORTS", ports()),
        Map.entry("GAPS", gaps()),
        Map.entry("SERVO", number(target.servoErrorUs(), 1)),
        Map.entry("TRAVEL", number(100 * target.servoErrorUs() / STICK_TRAVEL_US, 1)),
        Map.entry("WAIT", waits()));
  }

  Map<String, String> clockWords() {
    FrameClock clock = target.frameClock(rig);
    return Map.of(
        "CLOCK", clock.words(), "TICK", number(clock.tickUs(), 0), "WRAP", clock.wrapWords());
  }

  private double longest(ToDoubleFunction<SentTimes> time) {
    return lines.stream().map(Line.Sent::times).mapToDouble(time).max().orElse(0);
  }

  private String ports() {
    String chains =
        IntStream.range(0, lines.size())
            .filter(i -> lines.get(i).alonePort())
            .mapToObj(i -> rig.chains().get(i).id())
            .collect(Collectors.joining(", "));
    return chains.isEmpty()
        ? "| other pins of a chain's port | may be changed in a routine |"
        : "| other pins of the port of " + chains + " | **must not** be changed in a routine |";
  }

  private String gaps() {
    return rig.chains().stream()
        .map(
            chain -> {
              double reset = chain.type().line().resetUs();
              return "| "
                  + chain.id()
                  + " | "
                  + number(reset, 0)
                  + " us | "
                  + number(Math.floor(reset * SHARE_OF_RESET), 0)
                  + " us |";
            })
        .collect(Collectors.joining("\n"));
  }

  private String waits() {
    return IntStream.range(0, lines.size())
        .mapToObj(
            i -> {
              Chain chain = rig.chains().get(i);
              double us = chain.bytes() * 8 * lines.get(i).times().bitNs() / NS_PER_US;
              return number(us / 1000, 2) + " ms for " + chain.id();
            })
        .collect(Collectors.joining(", "));
  }
}
