package lampwright.engine.pattern;

import java.util.Arrays;
import lampwright.engine.time.Moment;

/** Paints a look while something holds, and dark while it does not. For one thread. */
abstract class OnOff implements Painter {
  private final double[] on;

  OnOff(PaintContext context, Look look) {
    on = context.drives(look);
  }

  /** Whether it shines at an instant. */
  abstract boolean lit(Moment tMs);

  @Override
  public final void paint(Moment tMs, double[] drives) {
    if (lit(tMs)) {
      System.arraycopy(on, 0, drives, 0, on.length);
    } else {
      Arrays.fill(drives, 0, on.length, 0);
    }
  }
}
