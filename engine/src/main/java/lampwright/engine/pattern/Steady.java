package lampwright.engine.pattern;

/** Shines without change. */
public record Steady(Look look) implements Pattern {
  public static final String KIND = "steady";

  @Override
  public String kind() {
    return KIND;
  }

  @Override
  public Painter painter(Stage stage) {
    return OnOff.painter(stage, look, tMs -> true);
  }
}
