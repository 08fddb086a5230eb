package lampwright.app.workshop.edit;

import java.util.Locale;
import lampwright.engine.rig.BitTimes;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;

/** The form in which the times of a data line are stated. */
enum LineForm {
  /** Each time, and one tolerance for all. */
  TOLERANCE,
  /** The least and the greatest of each time. */
  RANGES;

  /** Its word in texts. */
  String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The form of most of a line's times; a file may mix them. */
  static LineForm of(LineTiming line) {
    return line.toleranceNs().isPresent() ? TOLERANCE : RANGES;
  }

  /** The line with all its times in this form. No time gets wider limits than it had. */
  LineTiming apply(LineTiming line) {
    BitTimes zero = line.nominal(false);
    BitTimes one = line.nominal(true);
    double narrowestNs =
        Math.min(
            Math.min(roomNs(line.t0h(), zero.highNs()), roomNs(line.t0l(), zero.lowNs())),
            Math.min(roomNs(line.t1h(), one.highNs()), roomNs(line.t1l(), one.lowNs())));
    return new LineTiming(
        inForm(line.t0h(), zero.highNs(), narrowestNs),
        inForm(line.t0l(), zero.lowNs(), narrowestNs),
        inForm(line.t1h(), one.highNs(), narrowestNs),
        inForm(line.t1l(), one.lowNs(), narrowestNs),
        line.bit(),
        line.resetUs());
  }

  private LineTime inForm(LineTime time, double nominalNs, double narrowestNs) {
    return this == TOLERANCE
        ? new LineTime.Nominal(nominalNs, narrowestNs)
        : new LineTime.Range(
            Math.max(LineTime.MIN_NS, time.leastNs()),
            Math.min(LineTime.MAX_NS, time.greatestNs()));
  }

  private static double roomNs(LineTime time, double nominalNs) {
    return Math.min(nominalNs - time.leastNs(), time.greatestNs() - nominalNs);
  }
}
