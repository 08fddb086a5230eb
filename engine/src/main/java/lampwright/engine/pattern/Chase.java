package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * A body of lit pixels with a fading tail, moving one pixel per step.
 *
 * <p>Without bounce the head runs 0 to n - 1 and begins again, and body and tail reach round the
 * end. With bounce it runs 0 to n - 1 and back to 1, and they lie behind it in the direction of
 * travel and end at the first or last pixel; the head at either end still lies in the direction in
 * which it ran there, at the start forwards.
 *
 * @param look colour and level
 * @param phase the share of the period at which it starts
 * @param stepMs time of one step, above 0, to a day
 * @param width lit pixels from the head backwards, 1 to 4,096
 * @param tail fading pixels behind them, 0 to 4,096
 * @param bounce whether it runs back
 */
public record Chase(
    Look look, BigDecimal phase, BigDecimal stepMs, int width, int tail, boolean bounce)
    implements Pattern {
  public static final BigDecimal DEFAULT_STEP_MS = BigDecimal.valueOf(80);
  public static final int DEFAULT_WIDTH = 1;
  public static final int DEFAULT_TAIL = 0;
  public static final boolean DEFAULT_BOUNCE = false;

  public static final Shape<Chase> SHAPE =
      Shape.of(
          "chase",
          Chase.class,
          Look.group(Chase::look),
          Period.phase(Chase::phase),
          Field.usual("stepMs", Times.MS_ABOVE_0, Chase::stepMs, DEFAULT_STEP_MS),
          Field.usual("width", WholeType.ofInt(Unit.NONE, 1, 4096), Chase::width, DEFAULT_WIDTH),
          Field.usual("tail", WholeType.ofInt(Unit.NONE, 0, 4096), Chase::tail, DEFAULT_TAIL),
          Field.usual("bounce", new FlagType(), Chase::bounce, DEFAULT_BOUNCE));

  public Chase {
    phase = canonical(phase);
    stepMs = canonical(stepMs);
    SHAPE.check(look, phase, stepMs, width, tail, bounce).done();
  }

  @Override
  public Shape<Chase> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period(List<Mixer> row) {
    return Optional.of(Ratio.of(stepMs).times(steps(row.size())));
  }

  // Steps until the head is where it began.
  private int steps(int pixels) {
    return bounce ? Math.max(1, 2 * pixels - 2) : pixels;
  }

  @Override
  public Painter painter(PaintContext context) {
    int n = context.count();
    Mix[] full = context.mixes(look.colour());
    double[] lightBehind = lightBehind(context);
    Ratio step = Ratio.of(stepMs);
    Period period = Period.of(this, context);
    return new Painter() {
      @Override
      public void paint(Moment tMs, double[] drives) {
        int s = (int) period.place(tMs).floorOver(step);
        boolean forwards = s < n;
        int head = forwards ? s : 2 * n - 2 - s;
        for (int k = 0; k < n; k++) {
          int behind = forwards ? head - k : k - head;
          if (!bounce) {
            behind = Math.floorMod(behind, n);
          }
          double light = behind >= 0 && behind < lightBehind.length ? lightBehind[behind] : 0;
          full[k].write(light, drives, k * Mixer.SLOTS);
        }
      }

      @Override
      public long sameFor(Moment tMs, Ratio frameMs) {
        period.place(tMs).modulo(step);
        return period.framesBefore(step, frameMs);
      }
    };
  }

  // Light of the head, of the body behind it and of the tail behind that.
  private double[] lightBehind(PaintContext context) {
    double[] light = new double[Math.min(width + tail, context.count())];
    for (int behind = 0; behind < light.length; behind++) {
      int j = behind - width + 1;
      double level = j <= 0 ? look.level() : look.level() * (tail + 1 - j) / (tail + 1);
      light[behind] = context.curve().light(level);
    }
    return light;
  }
}
