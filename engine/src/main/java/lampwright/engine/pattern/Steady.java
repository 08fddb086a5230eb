package lampwright.engine.pattern;

import lampwright.engine.field.Shape;

/** Shines without change. */
public record Steady(Look look) implements Pattern {

  public static final Shape<Steady> SHAPE =
      Shape.of("steady", Steady.class, Look.group(Steady::look));

  @Override
  public Shape<Steady> shape() {
    return SHAPE;
  }

  @Override
  public Painter painter(PaintContext context) {
    return OnOff.painter(context, look, tMs -> true);
  }
}
