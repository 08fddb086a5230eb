package lampwright.engine.pattern;

import java.util.Arrays;
import java.util.function.Predicate;
import lampwright.engine.time.Moment;

/** Paints a look while something holds, and dark while it does not. */
final class OnOff {
  private OnOff() {}

  static Painter painter(PaintContext context, Look look, Predicate<Moment> lit) {
    double[] on = context.drives(look);
    return (tMs, drives) -> {
      if (lit.test(tMs)) {
        System.arraycopy(on, 0, drives, 0, on.length);
      } else {
        Arrays.fill(drives, 0, on.length, 0);
      }
    };
  }
}
