package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.Mixer;
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
  public static final String KIND = "test-walk";
  public static final BigDecimal DEFAULT_STEP_MS = BigDecimal.valueOf(500);

  public TestWalk {
    phase = canonical(phase);
    stepMs = canonical(stepMs);
    Period.check(Checks.of(KIND), phase).above0("stepMs", stepMs, Times.MAX_MS).done();
  }

  @Override
  public String kind() {
    return KIND;
  }

  @Override
  public Painter painter(Stage stage) {
    List<Integer> slots = new ArrayList<>();
    for (int k = 0; k < stage.count(); k++) {
      for (EmitterKind kind : EmitterKind.values()) {
        if (stage.mixers().get(k).has(kind)) {
          slots.add(k * Mixer.SLOTS + kind.slot());
        }
      }
    }
    double light = stage.curve().light(look.level());
    Ratio step = Ratio.of(stepMs);
    Period period = new Period(step.times(slots.size()), phase);
    return (tMs, drives) -> {
      Arrays.fill(drives, 0, stage.count() * Mixer.SLOTS, 0);
      drives[slots.get((int) period.place(tMs).over(step).floor())] = light;
    };
  }
}
