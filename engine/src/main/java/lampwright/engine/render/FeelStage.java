package lampwright.engine.render;

import java.util.Arrays;
import lampwright.engine.light.Mixer;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Lamp;

/** The warm-up of lamps that represent filaments: each drive follows what it is told, late. */
final class FeelStage {
  private static final double LN_10 = StrictMath.log(10);

  // A step of a warm-up rounds by less.
  private static final double ROUNDING = 0x1p-50;

  private final int[] packages;
  private final double[] errors;
  private final int[] slots;
  private final double[] rise;
  private final double[] fall;
  private final double[] light;

  FeelStage(FrameLayout layout, double frameMs) {
    packages =
        layout.rig().lamps().stream()
            .filter(lamp -> lamp.feel().isPresent())
            .flatMapToInt(lamp -> Arrays.stream(layout.packagesOf(lamp)))
            .toArray();
    errors = new double[packages.length];
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

  /** Marks the packages of lamps that have one. */
  void mark(boolean[] marks) {
    for (int at : packages) {
      marks[at] = true;
    }
  }

  /** Cold, as before the first frame of a scene that plays once. */
  void reset() {
    Arrays.fill(light, 0);
    Arrays.fill(errors, 0);
  }

  /**
   * One frame on: replaces the drives of warm lamps by those that they have reached. A drive
   * between two others is off by no more than they are, be it on the way up or down; so what a lamp
   * is off by is the most that it was told so far, and the rounding of each frame.
   */
  void follow(Light light) {
    follow(light.drives());
    for (int i = 0; i < packages.length; i++) {
      double told = light.error(packages[i]);
      double more = Math.max(told, errors[i]) - told;
      if (told > 0 || more > 0) {
        light.addError(packages[i], more + ROUNDING);
        errors[i] = light.error(packages[i]);
      }
    }
  }

  private void follow(double[] drives) {
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
