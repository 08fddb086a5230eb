package lampwright.engine.pattern;

import lampwright.engine.field.Shape;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/** Shines without change. */
public record Steady(Look look) implements Pattern {

  public static final Shape<Steady> SHAPE =
      Shape.of("steady", Steady.class, Look.group(Steady::look));

  /** Frames beyond the end of every scene. */
  private static final long FOR_EVER = 1L << 40;

  @Override
  public Shape<Steady> shape() {
    return SHAPE;
  }

  @Override
  public Painter painter(PaintContext context) {
    return new OnOff(context, look) {
      @Override
      boolean lit(Moment tMs) {
        return true;
      }

      @Override
      public long sameFor(Moment tMs, Ratio frameMs) {
        return FOR_EVER;
      }
    };
  }
}
