package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwright.engine.field.Shape;
import lampwright.engine.field.UnionType;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/** All patterns there are. */
public final class Patterns {
  /** The component that is the phase of every pattern that has one. */
  static final String PHASE = "phase";

  private static final String RATE = "perMinute";

  /** The shapes of all patterns, in the order in which {@link Pattern} permits them. */
  private static final List<Shape<? extends Pattern>> SHAPES =
      Arrays.stream(Pattern.class.getPermittedSubclasses()).map(Patterns::shapeOf).toList();

  /** Any pattern. */
  public static final UnionType<Pattern> ANY =
      new UnionType<>(
          "pattern",
          "must be an object",
          "kind",
          SHAPES,
          Optional.of(new Steady(Look.DEFAULT)),
          Optional.empty());

  private Patterns() {}

  /** The kinds of pattern, in the order in which they are listed to people. */
  public static List<String> kinds() {
    return ANY.words();
  }

  /**
   * A pattern of a kind with its usual values.
   *
   * @throws IllegalArgumentException if there is no such kind
   */
  public static Pattern fresh(String kind, Look look) {
    Shape<? extends Pattern> shape =
        ANY.shape(kind)
            .orElseThrow(
                () ->
                    new IllegalArgumentException("kind: " + kind + ": must be one of " + kinds()));
    return withLook(shape.draft().make(), look);
  }

  /** The same pattern with another look. */
  public static Pattern withLook(Pattern pattern, Look look) {
    return with(pattern, "look", look);
  }

  /** The same pattern at another rate; itself if it has none. */
  public static Pattern withRate(Pattern pattern, BigDecimal perMinute) {
    return with(pattern, RATE, perMinute);
  }

  /** Whether a pattern has a rate per minute. */
  public static boolean hasRate(Pattern pattern) {
    return pattern.shape().part(RATE).isPresent();
  }

  /**
   * Where in its period a pattern is, ms.
   *
   * @param row what it sees; it repeats there
   * @param tMs time since the start of its cue, at least 0
   */
  public static Ratio placeInPeriod(Pattern pattern, List<Mixer> row, Moment tMs) {
    return new Period(
            pattern.period(row).orElseThrow(), pattern.startPhase().orElse(BigDecimal.ZERO))
        .place(tMs)
        .ratio();
  }

  @SuppressWarnings("unchecked") // a pattern's shape is that of its own class
  static Optional<BigDecimal> phase(Pattern pattern) {
    return ((Shape<Pattern>) pattern.shape())
        .part(PHASE)
        .map(part -> (BigDecimal) part.get(pattern));
  }

  @SuppressWarnings("unchecked") // a pattern's shape is that of its own class
  static Pattern with(Pattern pattern, String component, Object value) {
    return ((Shape<Pattern>) pattern.shape()).with(pattern, component, value);
  }

  // Every pattern is a record with its shape in SHAPE, which it gives as shape() too.
  private static Shape<? extends Pattern> shapeOf(Class<?> pattern) {
    try {
      return ((Shape<?>) pattern.getField("SHAPE").get(null)).narrowed(Pattern.class);
    } catch (ReflectiveOperationException none) {
      throw new IllegalStateException(pattern + " has no public SHAPE", none);
    }
  }
}
