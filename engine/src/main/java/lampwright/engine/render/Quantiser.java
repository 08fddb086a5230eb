package lampwright.engine.render;

import java.util.Arrays;

/** Turns drives into the bytes of a frame: floor(255 x drive + 0.5). */
final class Quantiser {
  private static final int FULL = 255;

  private final int[] slots;
  private final boolean dither;
  private final double[] error;

  /** Room for a frame that is only tried. */
  private final byte[] trial;

  /**
   * @param dither whether what a byte cannot hold is carried into the emitter's next frame
   */
  Quantiser(FrameLayout layout, boolean dither) {
    this.slots = layout.slots();
    this.dither = dither;
    this.error = new double[dither ? slots.length : 0];
    this.trial = new byte[slots.length];
  }

  /** Forgets what was carried. */
  void reset() {
    Arrays.fill(error, 0);
  }

  /**
   * Writes the bytes of one frame.
   *
   * @param drives of every package, 0 to 1
   * @param factor every drive is multiplied by this, 0 to 1
   * @param into room for a frame
   */
  void write(double[] drives, double factor, byte[] into) {
    for (int i = 0; i < slots.length; i++) {
      double exact = exact(drives, factor, i);
      int duty = duty(exact);
      if (dither) {
        error[i] = exact - duty;
      }
      into[i] = (byte) duty;
    }
  }

  /** The bytes that {@link #write} would write, without carrying anything on. */
  byte[] tried(double[] drives, double factor) {
    for (int i = 0; i < slots.length; i++) {
      trial[i] = (byte) duty(exact(drives, factor, i));
    }
    return trial;
  }

  private double exact(double[] drives, double factor, int column) {
    double exact = FULL * (drives[slots[column]] * factor);
    return dither ? exact + error[column] : exact;
  }

  private static int duty(double exact) {
    return (int) Math.min(FULL, Math.max(0, Math.floor(exact + 0.5)));
  }
}
