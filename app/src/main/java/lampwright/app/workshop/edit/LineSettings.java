package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;

/** The values of a data line. */
final class LineSettings {
  private static final Kind.Amount NS = FormOfType.amount(LineTime.NS);
  private static final Kind.Amount TOLERANCE = FormOfType.amount(LineTiming.TOLERANCE_NS);

  /** What a bit's limits begin with when they are put in: the WS2812B's. */
  private static final LineTime.Range USUAL_BIT = new LineTime.Range(650, 1850);

  private LineSettings() {}

  /** Of times in the form that the line has now. */
  static List<Setting<LineTiming, ?>> of(LineTiming now) {
    List<Setting<LineTiming, ?>> settings = new ArrayList<>();
    settings.add(
        new Setting<>(
            "line.form",
            new Kind.Choice<>("lineForm", List.of(LineForm.values()), LineForm::key),
            LineForm::of,
            (line, form) -> form.apply(line)));
    settings.addAll(
        time("line.t0hNs", now, LineTiming::t0h, (l, t) -> with(l, t, l.t0l(), l.t1h(), l.t1l())));
    settings.addAll(
        time("line.t0lNs", now, LineTiming::t0l, (l, t) -> with(l, l.t0h(), t, l.t1h(), l.t1l())));
    settings.addAll(
        time("line.t1hNs", now, LineTiming::t1h, (l, t) -> with(l, l.t0h(), l.t0l(), t, l.t1l())));
    settings.addAll(
        time("line.t1lNs", now, LineTiming::t1l, (l, t) -> with(l, l.t0h(), l.t0l(), l.t1h(), t)));
    if (now.toleranceNs().isPresent()) {
      settings.add(
          Setting.ofDouble(
              "line.toleranceNs",
              TOLERANCE,
              line -> line.toleranceNs().orElse(LineTiming.DEFAULT_TOLERANCE_NS),
              LineSettings::withTolerance));
    }
    settings.add(
        new Setting<>(
            "line.bitNs",
            new Kind.Flag(),
            line -> line.bit().isPresent(),
            (line, limited) ->
                withBit(
                    line,
                    limited ? line.bit().or(() -> Optional.of(USUAL_BIT)) : Optional.empty())));
    if (now.bit().isPresent()) {
      settings.addAll(
          ends(
              "line.bitNs",
              line -> line.bit().orElse(USUAL_BIT),
              (line, bit) -> withBit(line, Optional.of(bit))));
    }
    settings.add(
        FieldSettings.of(
            LineTiming.RESET,
            "line.resetUs",
            (l, v) -> new LineTiming(l.t0h(), l.t0l(), l.t1h(), l.t1l(), l.bit(), v)));
    return settings;
  }

  private static List<Setting<LineTiming, BigDecimal>> time(
      String key,
      LineTiming now,
      Function<LineTiming, LineTime> get,
      BiFunction<LineTiming, LineTime, LineTiming> set) {
    if (get.apply(now) instanceof LineTime.Range) {
      return ends(
          key,
          line -> new LineTime.Range(get.apply(line).leastNs(), get.apply(line).greatestNs()),
          set::apply);
    }
    return List.of(
        Setting.ofDouble(
            key,
            NS,
            line -> get.apply(line).nominalNs(),
            (line, v) ->
                set.apply(
                    line,
                    new LineTime.Nominal(
                        v, line.toleranceNs().orElse(LineTiming.DEFAULT_TOLERANCE_NS)))));
  }

  private static List<Setting<LineTiming, BigDecimal>> ends(
      String key,
      Function<LineTiming, LineTime.Range> get,
      BiFunction<LineTiming, LineTime.Range, LineTiming> set) {
    return List.of(
        Setting.ofDouble(
            key + ".least",
            NS,
            line -> get.apply(line).leastNs(),
            (line, v) -> set.apply(line, new LineTime.Range(v, get.apply(line).greatestNs()))),
        Setting.ofDouble(
            key + ".greatest",
            NS,
            line -> get.apply(line).greatestNs(),
            (line, v) -> set.apply(line, new LineTime.Range(get.apply(line).leastNs(), v))));
  }

  private static LineTiming with(
      LineTiming line, LineTime t0h, LineTime t0l, LineTime t1h, LineTime t1l) {
    return new LineTiming(t0h, t0l, t1h, t1l, line.bit(), line.resetUs());
  }

  private static LineTiming withTolerance(LineTiming line, double toleranceNs) {
    Function<LineTime, LineTime> time =
        t -> t instanceof LineTime.Nominal ? new LineTime.Nominal(t.nominalNs(), toleranceNs) : t;
    return with(
        line,
        time.apply(line.t0h()),
        time.apply(line.t0l()),
        time.apply(line.t1h()),
        time.apply(line.t1l()));
  }

  private static LineTiming withBit(LineTiming l, Optional<LineTime.Range> bit) {
    return new LineTiming(l.t0h(), l.t0l(), l.t1h(), l.t1l(), bit, l.resetUs());
  }
}
