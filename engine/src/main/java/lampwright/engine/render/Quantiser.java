package lampwright.engine.render;

import java.util.Arrays;
import lampwright.engine.light.Mixer;

/** Turns drives into the bytes of a frame: floor(255 x drive + 0.5). */
final class Quantiser {
  private static final int FULL = 255;
  private static final double HALF = 0.5;

  private final int[] slots;
  private final boolean dither;
  private final double[] error;

  /** The first byte of each package, and behind the last. */
  private final int[] firstByte;

  /** The bytes written last, and the factor that they have. */
  private final byte[] bytes;

  private double writtenFactor = Double.NaN;

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
    this.bytes = new byte[slots.length];
    this.firstByte = new int[layout.packages() + 1];
    for (int i = slots.length - 1; i >= 0; i--) {
      firstByte[slots[i] / Mixer.SLOTS] = i;
    }
    firstByte[layout.packages()] = slots.length;
  }

  /** Forgets what was carried. */
  void reset() {
    Arrays.fill(error, 0);
  }

  /**
   * Writes the bytes of one frame, if its light decides every byte.
   *
   * @param factor every drive is multiplied by this, 0 to 1
   * @param into room for a frame; if a byte is undecided, it is not what it has to be
   * @return whether every byte is the one that exact light has
   */
  boolean write(Light light, double factor, byte[] into) {
    return dither ? writeDithered(light, factor, into) : writeEach(light, factor, into);
  }

  /** What is carried into the next byte of a column, in steps of a byte; 0 without dither. */
  double carried(int column) {
    return dither ? error[column] : 0;
  }

  /** The bytes that {@link #write} would write, without carrying anything on. */
  byte[] tried(Light light, double factor) {
    double[] drives = light.drives();
    for (int i = 0; i < slots.length; i++) {
      double exact = FULL * (drives[slots[i]] * factor);
      trial[i] = (byte) duty((dither ? exact + error[i] : exact) + HALF);
    }
    return trial;
  }

  private boolean writeEach(Light light, double factor, byte[] into) {
    boolean decided = true;
    if (light.isAllLaid() || factor != writtenFactor) {
      decided = write(light, factor, 0, slots.length);
    } else {
      int[] laid = light.laid();
      for (int i = 0; i < light.laidCount(); i += 2) {
        decided &= write(light, factor, firstByte[laid[i]], firstByte[laid[i + 1]]);
      }
    }
    writtenFactor = factor;
    light.written();
    System.arraycopy(bytes, 0, into, 0, bytes.length);
    return decided;
  }

  // Both sides are cheaper than a branch.
  @SuppressWarnings("ShortCircuitBoolean")
  private boolean write(Light light, double factor, int from, int to) {
    double[] drives = light.drives();
    double[] tolerances = light.tolerances();
    boolean undecided = false;
    for (int i = from; i < to; i++) {
      int slot = slots[i];
      double raised = FULL * (drives[slot] * factor) + HALF;
      int duty = (int) raised;
      double over = raised - duty;
      double tolerance = tolerances[slot / Mixer.SLOTS];
      undecided |= over < tolerance | over > 1 - tolerance;
      bytes[i] = (byte) Math.min(FULL, Math.max(0, duty));
    }
    return !undecided;
  }

  // Only exact light is dithered: an error would be carried from frame to frame, and grow.
  private boolean writeDithered(Light light, double factor, byte[] into) {
    double[] drives = light.drives();
    for (int i = 0; i < slots.length; i++) {
      double exact = FULL * (drives[slots[i]] * factor) + error[i];
      int duty = duty(exact + HALF);
      error[i] = exact - duty;
      into[i] = (byte) duty;
    }
    return true;
  }

  // A number below 0 is clamped, so that it does not matter to which side it is cut off.
  private static int duty(double raised) {
    return Math.min(FULL, Math.max(0, (int) raised));
  }
}
