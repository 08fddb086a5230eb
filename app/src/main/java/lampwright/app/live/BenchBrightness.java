package lampwright.app.live;

import lampwright.engine.check.Checks;

/**
 * How bright lamps on the bench are at most. A newly soldered chain is looked at from near, and fed
 * by whatever is at hand.
 *
 * @param percent of what the project has, 1 to 100
 */
public record BenchBrightness(int percent) {
  public static final int LEAST = 1;
  public static final int GREATEST = 100;

  /** What it is unless someone asks for more. */
  public static final BenchBrightness USUAL = new BenchBrightness(25);

  public BenchBrightness {
    Checks.require("brightness", percent, LEAST, GREATEST);
  }

  /** A duty as it is sent; what is lit stays lit. */
  int scale(int duty) {
    return duty == 0 ? 0 : Math.max(1, (duty * percent + GREATEST / 2) / GREATEST);
  }

  /** A frame as it is sent. */
  public byte[] of(byte[] frame) {
    byte[] scaled = new byte[frame.length];
    for (int i = 0; i < frame.length; i++) {
      scaled[i] = (byte) scale(frame[i] & 0xFF);
    }
    return scaled;
  }
}
