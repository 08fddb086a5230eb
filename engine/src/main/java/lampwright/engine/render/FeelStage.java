package lampwright.engine.render;

import java.util.Arrays;
import lampwright.engine.light.Mixer;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Lamp;

/** The warm-up of lamps that represent filaments: each drive follows what it is told, late. */
final class FeelStage {
  private static final double LN_10 = StrictMath.log(10);

  private final int[] slots;
  private final double[] rise;
  private final double[] fall;
  private final double[] light;

  FeelStage(FrameLayout layout, double frameMs) {
    int[] packages =
        layout.rig().lamps().stream()
            .filter(lamp -> lamp.feel().isPresent())
            .flatMapToInt(lamp -> Arrays.stream(layout.packagesOf(lamp)))
            .toArray();
    slots = new int[packages.length * Mixer.SLOTS];
    rise = new double[slots.length];
    fall = new double[slots.length];
    light = new double[slots.length];
    int next = 0;
    for (Lamp lamp : layout.rig().lamps()) {
      if (lamp.feel().isEmpty()) {
        continue;
      }
      Feel feel = lamp.feel().get();
      double up = share(frameMs, feel.riseMs());
      double down = share(frameMs, feel.fallMs());
      for (int at : layout.packagesOf(lamp)) {
        for (int slot = 0; slot < Mixer.SLOTS; slot++, next++) {
          slots[next] = at * Mixer.SLOTS + slot;
          rise[next] = up;
          fall[next] = down;
        }
      }
    }
  }

  /** Whether any lamp has a warm-up. */
  boolean present() {
    return slots.length > 0;
  }

  /** Cold, as before the first frame of a scene that plays once. */
  void reset() {
    Arrays.fill(light, 0);
  }

  /** One frame on: replaces the drives of warm lamps by those that they have reached. */
  void follow(double[] drives) {
    for (int i = 0; i < slots.length; i++) {
      double target = drives[slots[i]];
      double y = light[i];
      y += (target - y) * (target > y ? rise[i] : fall[i]);
      light[i] = y;
      drives[slots[i]] = y;
    }
  }

  // The part of the way made in one frame, with time constant ninetyMs / ln 10.
  private static double share(double frameMs, double ninetyMs) {
    return ninetyMs == 0 ? 1 : 1 - StrictMath.exp(-frameMs * LN_10 / ninetyMs);
  }
}
