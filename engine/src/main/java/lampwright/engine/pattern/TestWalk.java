package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import com.google.common.primitives.Ints;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Colour;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * Proves the wiring: every emitter alone, red, green, blue, white, pixel by pixel, and from the
 * start again. A driver output is one step.
 *
 * @param look its level; the colours are the emitters' own
 * @param phase the share of the whole walk at which it starts
 * @param stepMs time of one step, above 0, to a day
 */
public record TestWalk(Look look, BigDecimal phase, BigDecimal stepMs) implements Pattern {
  public static final BigDecimal DEFAULT_STEP_MS = BigDecimal.valueOf(500);

  public static final Shape<TestWalk> SHAPE =
      Shape.of(
          "test-walk",
          TestWalk.class,
          Look.group(TestWalk::look),
          Period.phase(TestWalk::phase),
          Field.usual("stepMs", Times.MS_ABOVE_0, TestWalk::stepMs, DEFAULT_STEP_MS));

  public TestWalk {
    phase = canonical(phase);
    stepMs = canonical(stepMs);
    SHAPE.check(look, phase, stepMs).done();
  }

  @Override
  public Shape<TestWalk> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period(List<Mixer> row) {
    return Optional.of(Ratio.of(stepMs).times(slots(row).size()));
  }

  /** None: the colours are the emitters' own. */
  @Override
  public Map<String, Colour> colours() {
    return Map.of();
  }

  // The drives that it lights one after another.
  private static List<Integer> slots(List<Mixer> row) {
    List<Integer> slots = new ArrayList<>();
    for (int k = 0; k < row.size(); k++) {
      for (EmitterKind kind : EmitterKind.values()) {
        if (row.get(k).has(kind)) {
          slots.add(k * Mixer.SLOTS + kind.slot());
        }
      }
    }
    return slots;
  }

  @Override
  public Painter painter(PaintContext context) {
    int[] slots = Ints.toArray(slots(context.mixers()));
    double light = context.curve().light(look.level());
    Ratio step = Ratio.of(stepMs);
    Period period = Period.of(this, context);
    return new Painter() {
      @Override
      public void paint(Moment tMs, double[] drives) {
        Arrays.fill(drives, 0, context.count() * Mixer.SLOTS, 0);
        drives[slots[(int) period.place(tMs).floorOver(step)]] = light;
      }

      @Override
      public long sameFor(Moment tMs, Ratio frameMs) {
        period.place(tMs).modulo(step);
        return period.framesBefore(step, frameMs);
      }
    };
  }
}
