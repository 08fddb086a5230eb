package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.NUMBER;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;

/** Reads the times of a pixel type's data line: each a number, or the least and the greatest. */
final class LineTimingReader {
  private static final String RANGE = "needs the least and the greatest time: [300, 450]";
  private static final ValueKind<Double> TIME =
      new ValueKind<>(
          NUMBER.type(),
          "needs a number, or the least and the greatest time: [300, 450]",
          List.of(),
          NUMBER.reading());

  private LineTimingReader() {}

  static LineTiming read(Located at, Fields parent) {
    Fields f = at.fields();
    f.expect("t0hNs", "t0lNs", "t1hNs", "t1lNs");
    LineTiming usual = LineTiming.DEFAULT;
    double tolerance = f.optional("toleranceNs", NUMBER, LineTiming.DEFAULT_TOLERANCE_NS);
    // Where every time is a range it is for none of them, but has to be a tolerance all the same.
    Checks.of("line")
        .range("toleranceNs", tolerance, 0, LineTime.MAX_NS)
        .faults()
        .forEach(fault -> f.report(fault, References.NONE));
    LineTime t0h = time(f, "t0hNs", usual.t0h(), tolerance);
    LineTime t0l = time(f, "t0lNs", usual.t0l(), tolerance);
    LineTime t1h = time(f, "t1hNs", usual.t1h(), tolerance);
    LineTime t1l = time(f, "t1lNs", usual.t1l(), tolerance);
    Optional<LineTime.Range> bit = f.find("bitNs").flatMap(b -> range(b, f, "bitNs"));
    double reset = f.optional("resetUs", NUMBER, usual.resetUs());
    LineTiming line = f.build(() -> new LineTiming(t0h, t0l, t1h, t1l, bit, reset), () -> usual);
    f.close();
    if (!f.sound()) {
      parent.breaks("line");
    }
    return line;
  }

  private static LineTime time(Fields f, String name, LineTime usual, double toleranceNs) {
    LineTime standIn = new LineTime.Nominal(usual.nominalNs(), toleranceNs);
    Optional<Located> at = f.find(name);
    if (at.isPresent() && at.get().json() instanceof Json.Arr) {
      return range(at.get(), f, name).map(r -> (LineTime) r).orElse(standIn);
    }
    boolean number = at.isPresent() && at.get().json() instanceof Json.Num;
    return f.given(name, number ? NUMBER : TIME)
        .map(ns -> (LineTime) new LineTime.Nominal(ns, toleranceNs))
        .orElse(standIn);
  }

  private static Optional<LineTime.Range> range(Located at, Fields f, String name) {
    Optional<List<Located>> ends =
        at.as(new ValueKind<>(Json.Arr.class, RANGE, List.of(), LineTimingReader::pair))
            .map(at::items);
    Optional<Double> least = ends.flatMap(e -> e.get(0).as(NUMBER));
    Optional<Double> greatest = ends.flatMap(e -> e.get(1).as(NUMBER));
    if (least.isEmpty() || greatest.isEmpty()) {
      f.breaks(name);
      return Optional.empty();
    }
    return Optional.of(new LineTime.Range(least.get(), greatest.get()));
  }

  private static Optional<List<Json>> pair(Json json) {
    return json instanceof Json.Arr list && list.items().size() == 2
        ? Optional.of(list.items())
        : Optional.empty();
  }
}
