package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Mix;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * Moves from keyframe to keyframe. Before the first one its values apply; after the last one its
 * values hold, or with repeat time begins again at the last keyframe's time. Of two keyframes at
 * one time the later one applies from there.
 *
 * @param look used where a keyframe gives no colour or level
 * @param phase with repeat, the share of the period at which it starts
 * @param frames at least one, in order of time
 * @param repeat whether time begins again
 */
public record Keyframes(Look look, BigDecimal phase, List<Keyframe> frames, boolean repeat)
    implements Pattern {
  public static final ListLimit FRAMES = new ListLimit(1, 100_000, "keyframes");
  public static final boolean DEFAULT_REPEAT = true;

  public static final Shape<Keyframes> SHAPE =
      Shape.of(
          "keyframes",
          Keyframes.class,
          Look.group(Keyframes::look),
          Period.phase(Keyframes::phase),
          Field.required(
              "frames",
              new ListType<>(RecordType.of(Keyframe.SHAPE, Keyframe::after), FRAMES),
              Keyframes::frames,
              Keyframe.FIRST),
          Field.usual("repeat", new FlagType(), Keyframes::repeat, DEFAULT_REPEAT));

  public Keyframes {
    phase = Checks.canonical(phase);
    frames = List.copyOf(frames);
    Checks checks = SHAPE.check(look, phase, frames, repeat);
    for (int i = 1; i < frames.size(); i++) {
      if (frames.get(i).atMs().compareTo(frames.get(i - 1).atMs()) < 0) {
        checks.add(
            "frames[" + i + "].atMs",
            frames.get(i).atMs().toPlainString(),
            "must be at least "
                + frames.get(i - 1).atMs().toPlainString()
                + ", the time of the keyframe before");
      }
    }
    checks.done();
  }

  @Override
  public Shape<Keyframes> shape() {
    return SHAPE;
  }

  @Override
  public Map<String, Colour> colours() {
    Map<String, Colour> colours = new LinkedHashMap<>();
    if (frames.stream().anyMatch(frame -> frame.colour().isEmpty())) {
      colours.put("colour", look.colour());
    }
    for (int i = 0; i < frames.size(); i++) {
      String field = "frames[" + i + "].colour";
      frames.get(i).colour().ifPresent(colour -> colours.put(field, colour));
    }
    return colours;
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(frames.get(frames.size() - 1).atMs())
        .filter(last -> repeat && last.signum() > 0)
        .map(Ratio::of);
  }

  @Override
  public Painter painter(PaintContext context) {
    Blender blender = new Blender(context.curve());
    Moment since = new Moment();
    Stop[] stops = new Stop[frames.size()];
    for (int i = 0; i < stops.length; i++) {
      Keyframe next = frames.get(Math.min(i + 1, stops.length - 1));
      stops[i] = stop(frames.get(i), next, context);
    }
    UnaryOperator<Moment> clock =
        period().isPresent() ? Period.of(this, context)::place : UnaryOperator.identity();
    return (tMs, drives) -> {
      Moment place = clock.apply(tMs);
      int right = firstAfter(stops, place);
      Stop a = stops[Math.max(0, right - 1)];
      Stop b = stops[Math.min(right, stops.length - 1)];
      double u = 0;
      if (a != b) {
        since.setDifference(place, a.atMs);
        u = a.easing.ease(since.over(a.untilNextMs));
      }
      blender.mix(a.mixes, b.mixes, a.level, b.level, u, drives);
    };
  }

  private Stop stop(Keyframe frame, Keyframe next, PaintContext context) {
    return new Stop(
        Ratio.of(frame.atMs()),
        Ratio.of(next.atMs().subtract(frame.atMs())),
        context.mixes(frame.colour().orElse(look.colour())),
        frame.level().orElse(look.level()),
        frame.easing());
  }

  // Index of the first stop later than the place; the number of stops if there is none.
  private static int firstAfter(Stop[] stops, Moment place) {
    int low = 0;
    int high = stops.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (place.compareTo(stops[middle].atMs) >= 0) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static final class Stop {
    private final Ratio atMs;
    private final Ratio untilNextMs;
    private final Mix[] mixes;
    private final double level;
    private final Easing easing;

    Stop(Ratio atMs, Ratio untilNextMs, Mix[] mixes, double level, Easing easing) {
      this.atMs = atMs;
      this.untilNextMs = untilNextMs;
      this.mixes = mixes;
      this.level = level;
      this.easing = easing;
    }
  }
}
