package lampwright.engine.meter;

import java.util.Arrays;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.SrgbSpace;

/**
 * The changes that count towards a red flash by WCAG 2.2: to or from a state of saturated red, that
 * is R/(R + G + B) of 0.8 or more, by more than 0.2 in the CIE 1976 u'v' diagram.
 *
 * <p>WCAG leaves open where darkness lies in that diagram; here it lies at white (D65), from which
 * saturated red is more than 0.2 away, so that red lights that go on and off count.
 */
final class RedChanges {
  private static final double SATURATED = 0.8;
  private static final double LEAST_CHANGE = 0.2;
  private static final double ROUNDING = 1e-9;
  // Ours: less than this share of white, all channels together, is darkness: the last steps of a
  // byte have coarse colours that nobody sees.
  private static final double DARK = 0.03;

  private final double[] rgb;
  private final int frames;
  private final int reddest;
  private final int origin;
  private final int last;

  RedChanges(double[] rgb, boolean loop) {
    this.rgb = rgb;
    this.frames = rgb.length / 3;
    int most = 0;
    for (int i = 1; i < frames; i++) {
      if (redness(i) > redness(most)) {
        most = i;
      }
    }
    this.reddest = most;
    // From its reddest frame a loop comes back to where it was.
    this.origin = loop ? reddest : 0;
    this.last = loop ? frames : frames - 1;
  }

  /** The frames of the changes, rising. */
  int[] frames() {
    int[] found = new int[last + 1];
    int count = 0;
    // The reddest frame since red came, and the one farthest from that since red went.
    int red = -1;
    int away = -1;
    for (int i = 0; i <= last; i++) {
      int now = (origin + i) % frames;
      boolean saturated = redness(now) >= SATURATED - ROUNDING;
      if (red < 0 || away >= 0) {
        if (saturated && (away < 0 || far(now, away))) {
          if (away >= 0) {
            found[count++] = now;
          }
          red = now;
          away = -1;
        } else if (away < 0 || isFarther(now, away, red < 0 ? reddest : red)) {
          away = now;
        }
      } else if (far(now, red)) {
        found[count++] = now;
        away = now;
      } else if (saturated && redness(now) > redness(red)) {
        red = now;
      }
    }
    int[] frame = Arrays.copyOf(found, count);
    Arrays.sort(frame);
    return frame;
  }

  private double redness(int frame) {
    double sum = sum(frame);
    return sum < DARK ? 0 : rgb[3 * frame] / sum;
  }

  private double sum(int frame) {
    return rgb[3 * frame] + rgb[3 * frame + 1] + rgb[3 * frame + 2];
  }

  private boolean far(int one, int other) {
    return distance(one, other) > LEAST_CHANGE + ROUNDING;
  }

  private boolean isFarther(int one, int other, int from) {
    return distance(one, from) > distance(other, from);
  }

  private double distance(int one, int other) {
    double du = u(one) - u(other);
    double dv = v(one) - v(other);
    return Math.sqrt(du * du + dv * dv);
  }

  private double u(int frame) {
    return sum(frame) < DARK ? Chromaticity.D65.uPrime() : 4 * x(frame) / scale(frame);
  }

  private double v(int frame) {
    return sum(frame) < DARK ? Chromaticity.D65.vPrime() : 9 * y(frame) / scale(frame);
  }

  private double x(int i) {
    return SrgbSpace.x(rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2]);
  }

  private double y(int i) {
    return SrgbSpace.y(rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2]);
  }

  private double scale(int i) {
    return x(i) + 15 * y(i) + 3 * SrgbSpace.z(rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2]);
  }
}
