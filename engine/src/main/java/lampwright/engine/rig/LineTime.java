package lampwright.engine.rig;

import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Unit;

/**
 * How long a level of a data line lasts, in the form in which it is stated. A {@link LineTiming}
 * checks its times, since it knows their names.
 */
public sealed interface LineTime {
  /** The range of every time. */
  NumberType NS = new NumberType(Unit.NANOSECONDS, 1, 1_000_000);

  double MIN_NS = NS.min();

  double MAX_NS = NS.max();

  /** The least that is within the limits, ns. */
  double leastNs();

  /** The greatest that is within the limits, ns. */
  double greatestNs();

  /** What was stated, or the middle of the range, ns. */
  double nominalNs();

  /** As it was stated: the time, or the least and the greatest, ns. */
  List<Double> stated();

  /** A time as it was stated, and how far it may be off where that is one number, ns. */
  static LineTime of(List<Double> stated, double toleranceNs) {
    return stated.size() == 1
        ? new Nominal(stated.get(0), toleranceNs)
        : new Range(stated.get(0), stated.get(1));
  }

  /** Adds what is wrong with it. */
  void check(String field, Checks checks);

  /**
   * A time and how far it may be off.
   *
   * @param nominalNs 1 to 1,000,000 ns
   * @param toleranceNs to either side, 0 to 1,000,000 ns
   */
  record Nominal(double nominalNs, double toleranceNs) implements LineTime {
    @Override
    public double leastNs() {
      return Math.max(0, nominalNs - toleranceNs);
    }

    @Override
    public double greatestNs() {
      return nominalNs + toleranceNs;
    }

    @Override
    public List<Double> stated() {
      return List.of(nominalNs);
    }

    @Override
    public void check(String field, Checks checks) {
      NS.check(field, nominalNs, checks);
    }
  }

  /**
   * The least and the greatest time.
   *
   * @param leastNs 1 to 1,000,000 ns
   * @param greatestNs at least the least, to 1,000,000 ns
   */
  record Range(double leastNs, double greatestNs) implements LineTime {
    @Override
    public double nominalNs() {
      return (leastNs + greatestNs) / 2;
    }

    @Override
    public List<Double> stated() {
      return List.of(leastNs, greatestNs);
    }

    @Override
    public void check(String field, Checks checks) {
      NS.check(field + "[0]", leastNs, checks);
      NS.check(field + "[1]", greatestNs, checks);
      checks
          // Written so that NaN, which was refused above, is not refused again.
          .that(
          !(leastNs > greatestNs),
          field,
          Checks.plain(leastNs) + " to " + Checks.plain(greatestNs),
          "must be the minimum first, then the maximum");
    }
  }
}
