package lampwright.engine.meter;

import java.util.Arrays;
import lampwright.engine.light.SrgbSpace;

/**
 * The changes of luminance that count towards a general flash by WCAG 2.2: 10 % of white or more
 * from one turn to the next, with the darker of the two below 0.80.
 */
final class LuminanceChanges {
  private static final double LEAST_CHANGE = 0.10;
  private static final double DARKER_BELOW = 0.80;
  // Luminances are sums of products; the bounds must not fall to their rounding.
  private static final double ROUNDING = 1e-9;

  private final double[] rgb;
  private final int frames;
  private final int origin;
  private final int last;
  private int[] found = new int[16];
  private int count;

  LuminanceChanges(double[] rgb, boolean loop) {
    this.rgb = rgb;
    this.frames = rgb.length / 3;
    int darkest = 0;
    for (int i = 1; i < frames; i++) {
      if (light(i) < light(darkest)) {
        darkest = i;
      }
    }
    // From its darkest frame a loop comes back to where it was, whatever lies between.
    this.origin = loop ? darkest : 0;
    this.last = loop ? frames : frames - 1;
  }

  /** The frames at which the changes come to 10 %, rising. */
  int[] frames() {
    double high = at(0);
    double low = at(0);
    double turn = 0; // the light at the last turn
    int change = -1; // the frame of the change under way
    boolean rising = false;
    for (int i = 1; i <= last; i++) {
      double now = at(i);
      if (change < 0) {
        high = Math.max(high, now);
        low = Math.min(low, now);
        boolean up = reaches(now - low);
        if (up || reaches(high - now)) {
          rising = up;
          turn = up ? low : high;
          high = now;
          low = now;
          change = i;
        }
      } else if (rising) {
        high = Math.max(high, now);
        if (reaches(high - now)) {
          add(change, turn);
          rising = false;
          turn = high;
          low = now;
          change = i;
        }
      } else {
        low = Math.min(low, now);
        if (reaches(now - low)) {
          add(change, low);
          rising = true;
          turn = low;
          high = now;
          change = i;
        }
      }
    }
    if (change >= 0) {
      add(change, rising ? turn : low);
    }
    int[] frame = Arrays.copyOf(found, count);
    Arrays.sort(frame);
    return frame;
  }

  private double at(int i) {
    int place = origin + i;
    return light(place < frames ? place : place - frames);
  }

  private double light(int frame) {
    return SrgbSpace.y(rgb[3 * frame], rgb[3 * frame + 1], rgb[3 * frame + 2]);
  }

  private static boolean reaches(double change) {
    return change >= LEAST_CHANGE - ROUNDING;
  }

  private void add(int frame, double darker) {
    if (darker < DARKER_BELOW - ROUNDING) {
      if (count == found.length) {
        found = Arrays.copyOf(found, 2 * count);
      }
      found[count++] = (origin + frame) % frames;
    }
  }
}
