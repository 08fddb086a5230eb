package lampwright.engine.meter;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Show;

/**
 * What the situations of a show ask of supply and eye together, over every combination of them that
 * can be active in one frame. What is known of them without trying drives rules combinations out;
 * of the others, some may never come, and scenes that start by themselves may never meet in the
 * phase that is looked at. So a figure is a bound, unless it is exact.
 *
 * @param supply the most that everything draws together; the ceiling is left out of it
 * @param chains the most that each chain draws, its idle current included
 * @param flashes the most general flashes of all lamps together in any second while the same
 *     situations are active; none if that is too much to work out
 * @param darkLamps ids of the lamps that stay dark although a scene of a situation drives them
 */
public record ShowMeasure(
    Bound supply, List<Bound> chains, Optional<Flashes> flashes, List<String> darkLamps) {
  /**
   * A current that no frame of any drive exceeds.
   *
   * @param id of the chain, or {@code supply}
   * @param exact whether some frame reaches it
   * @param situations ids of those that draw some of it, in order of the list
   * @param sceneMilliamps the most that a scene of them draws when it plays alone
   */
  public record Bound(
      String id, double milliamps, boolean exact, List<String> situations, double sceneMilliamps) {
    public Bound {
      situations = List.copyOf(situations);
    }

    /** Whether it is over a limit that every scene alone keeps, or further over it than any. */
    public boolean exceeds(double limitMilliamps) {
      return milliamps > Math.max(limitMilliamps, sceneMilliamps) * (1 + ROUNDING);
    }
  }

  /**
   * General flashes of all lamps together, as in {@link FlashCaution}.
   *
   * @param perSecond no second has more
   * @param situations ids of those whose lamps are lit then, in order of the list
   * @param perSecondAlone the same for the worst scene when it plays alone
   */
  public record Flashes(int perSecond, List<String> situations, int perSecondAlone) {
    public Flashes {
      situations = List.copyOf(situations);
    }

    /** Whether together there may be too many, and more than of a scene alone. */
    public boolean adds() {
      return perSecond > Math.max(FlashCaution.MOST_FLASHES, perSecondAlone);
    }
  }

  private static final double ROUNDING = 1e-9;

  public ShowMeasure {
    chains = List.copyOf(chains);
    darkLamps = List.copyOf(darkLamps);
  }

  /**
   * Measures a show; this renders its scenes. On a thread that is interrupted it ends with a {@link
   * java.util.concurrent.CancellationException}.
   */
  public static ShowMeasure of(Show show) {
    return new ShowMeter(show, ShowMeter.MAX_FREE).measure();
  }

  /**
   * The share to which the rig's ceiling dims the worst frame, 0 to 1; none if there is no ceiling,
   * no frame is over the limit, or what all pixels draw when dark already is.
   */
  public OptionalDouble ceilingShare(Rig rig) {
    double limit = rig.supplyLimitMilliamps();
    if (!rig.ceiling() || supply.milliamps() <= limit * (1 + ROUNDING)) {
      return OptionalDouble.empty();
    }
    double idle = new FrameCurrent(new FrameLayout(rig)).idleMilliamps();
    return idle <= limit
        ? OptionalDouble.of((limit - idle) / (supply.milliamps() - idle))
        : OptionalDouble.empty();
  }

  /** What is left of a bound below the rig's ceiling. */
  public Bound sent(Rig rig, Bound bound) {
    return ceilingShare(rig).isEmpty()
        ? bound
        : new Bound(
            bound.id(),
            Math.min(bound.milliamps(), rig.supplyLimitMilliamps()),
            false,
            bound.situations(),
            bound.sceneMilliamps());
  }

  /** The most that a chain draws. */
  public Bound chain(String id) {
    return chains.stream()
        .filter(bound -> bound.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("chain: " + id + ": must be of the rig"));
  }
}
