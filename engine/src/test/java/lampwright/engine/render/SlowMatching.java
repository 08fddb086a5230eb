package lampwright.engine.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Colour;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Planck;

/**
 * A second, slow reading of the rule of matched colour, from its text alone: all corners of the
 * drives that are possible are tried. Drives are those of the emitters that there are, in the order
 * of {@link EmitterKind}.
 */
final class SlowMatching {
  private static final double ROUNDING = 1e-9;
  private static final double[] D65 = {0.3127, 0.3290};

  private final List<FittedEmitter> emitters;
  private final double[][] xyz;
  private final double white;

  SlowMatching(Map<EmitterKind, FittedEmitter> emitters) {
    this.emitters = new ArrayList<>();
    for (EmitterKind kind : EmitterKind.values()) {
      if (emitters.containsKey(kind)) {
        this.emitters.add(emitters.get(kind));
      }
    }
    xyz = new double[this.emitters.size()][];
    for (int i = 0; i < xyz.length; i++) {
      Chromaticity c = this.emitters.get(i).light().chromaticity();
      xyz[i] = xyz(new double[] {c.x(), c.y()}, this.emitters.get(i).light().millicandela());
    }
    white = greatest(nearest(D65));
  }

  /** A colour at a light of 0 to 1. */
  double[] drives(Colour colour, double light) {
    if (colour instanceof Colour.Drive d) {
      double[] all = {d.r() * light, d.g() * light, d.b() * light, d.w() * light};
      return java.util.Arrays.copyOf(all, xyz.length);
    }
    if (colour instanceof Colour.Kelvin k) {
      double[] c = kelvin(k.kelvin());
      return least(c, light * greatest(c));
    }
    if (colour instanceof Colour.Signal s) {
      double[] c =
          nearest(new double[] {s.colour().chromaticity().x(), s.colour().chromaticity().y()});
      return least(c, light * greatest(c));
    }
    double[] rgb = linear(colour);
    // IEC 61966-2-1, in its four digits.
    double x = 0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2];
    double y = 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    double z = 0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2];
    if (y == 0) {
      return new double[xyz.length];
    }
    double[] c = nearest(new double[] {x / (x + y + z), y / (x + y + z)});
    return least(c, light * Math.min(y * white, greatest(c)));
  }

  /** A white on the way from one temperature to another. */
  double[] tint(double kelvin, double toKelvin, double now, double light) {
    double[] c = kelvin(now);
    double ends = Math.min(greatest(kelvin(kelvin)), greatest(kelvin(toKelvin)));
    return least(c, light * Math.min(ends, greatest(c)));
  }

  private double[] kelvin(double kelvin) {
    Chromaticity c = Planck.chromaticity(kelvin);
    return nearest(new double[] {c.x(), c.y()});
  }

  private static double[] linear(Colour colour) {
    double[] rgb = new double[3];
    if (colour instanceof Colour.Srgb c) {
      rgb[0] = c.red() / 255.0;
      rgb[1] = c.green() / 255.0;
      rgb[2] = c.blue() / 255.0;
    } else if (colour instanceof Colour.Hue h) {
      // The usual HSV formula of textbooks, at value 1.
      double sixth = h.degrees() / 60 % 6;
      double side = 1 - Math.abs(sixth % 2 - 1);
      double[][] hexagon = {
        {1, side, 0}, {side, 1, 0}, {0, 1, side}, {0, side, 1}, {side, 0, 1}, {1, 0, side}
      };
      for (int i = 0; i < 3; i++) {
        rgb[i] = 1 - h.saturation() * (1 - hexagon[(int) sixth][i]);
      }
    }
    for (int i = 0; i < 3; i++) {
      rgb[i] = rgb[i] <= 0.04045 ? rgb[i] / 12.92 : Math.pow((rgb[i] + 0.055) / 1.055, 2.4);
    }
    return rgb;
  }

  // Of all corners of what gives c and Y, the one that draws least; of equals that of most white.
  private double[] least(double[] c, double light) {
    double[] wanted = xyz(c, light);
    if (xyz.length == 3) {
      return solve(wanted, 0, 1, 2);
    }
    double[] best = null;
    for (int fixed = 0; fixed < 4; fixed++) {
      for (int bound = 0; bound <= 1; bound++) {
        double[] rest = wanted.clone();
        for (int row = 0; row < 3; row++) {
          rest[row] -= bound * xyz[fixed][row];
        }
        int[] free = {fixed == 0 ? 1 : 0, fixed <= 1 ? 2 : 1, fixed <= 2 ? 3 : 2};
        double[] three = solve(rest, free[0], free[1], free[2]);
        double[] drives = new double[4];
        drives[fixed] = bound;
        for (int i = 0; i < 3; i++) {
          drives[free[i]] = three[i];
        }
        if (possible(drives) && (best == null || better(drives, best))) {
          best = drives;
        }
      }
    }
    if (best == null) {
      throw new IllegalStateException("nothing gives " + c[0] + " " + c[1] + " at " + light);
    }
    return best;
  }

  private boolean better(double[] drives, double[] than) {
    double less = milliamps(than) - milliamps(drives);
    return less > 1e-9 || (less > -1e-9 && drives[3] > than[3]);
  }

  private double milliamps(double[] drives) {
    double sum = 0;
    for (int i = 0; i < drives.length; i++) {
      sum += emitters.get(i).milliamps() * drives[i];
    }
    return sum;
  }

  // At the greatest luminance all but two of the drives are 0 or 1.
  private double greatest(double[] c) {
    double best = 0;
    for (int i = 0; i < xyz.length; i++) {
      for (int j = 0; j < i; j++) {
        for (int bounds = 0; bounds < 1 << xyz.length; bounds++) {
          best = Math.max(best, corner(c, i, j, bounds));
        }
      }
    }
    return best;
  }

  private double corner(double[] c, int i, int j, int bounds) {
    double[] drives = new double[xyz.length];
    double[] right = new double[2];
    for (int k = 0; k < drives.length; k++) {
      drives[k] = k == i || k == j ? 0 : bounds >> k & 1;
      right[0] -= drives[k] * off(c, k, 0);
      right[1] -= drives[k] * off(c, k, 1);
    }
    double det = off(c, i, 0) * off(c, j, 1) - off(c, j, 0) * off(c, i, 1);
    drives[i] = (right[0] * off(c, j, 1) - off(c, j, 0) * right[1]) / det;
    drives[j] = (off(c, i, 0) * right[1] - right[0] * off(c, i, 1)) / det;
    double light = 0;
    for (int k = 0; k < drives.length; k++) {
      light += drives[k] * xyz[k][1];
    }
    return possible(drives) ? light : 0;
  }

  // What an emitter adds to X - x S or Y - y S, which the chromaticity makes 0.
  private double off(double[] c, int emitter, int row) {
    double sum = xyz[emitter][0] + xyz[emitter][1] + xyz[emitter][2];
    return xyz[emitter][row] - c[row] * sum;
  }

  private static boolean possible(double[] drives) {
    for (double drive : drives) {
      if (!(drive >= -ROUNDING && drive <= 1 + ROUNDING)) {
        return false;
      }
    }
    return true;
  }

  private double[] nearest(double[] c) {
    for (int i = 0; i < xyz.length; i++) {
      for (int j = 0; j < i; j++) {
        for (int k = 0; k < j; k++) {
          double[] weights = solve(xyz(c, 1), i, j, k);
          if (weights[0] >= -1e-15 && weights[1] >= -1e-15 && weights[2] >= -1e-15) {
            return c;
          }
        }
      }
    }
    double least = Double.POSITIVE_INFINITY;
    double[] best = c;
    double[] at = uv(c);
    for (int i = 0; i < xyz.length; i++) {
      for (int j = 0; j < i; j++) {
        double[] from = uv(emitters.get(i).light().chromaticity());
        double[] to = uv(emitters.get(j).light().chromaticity());
        double du = to[0] - from[0];
        double dv = to[1] - from[1];
        double along = ((at[0] - from[0]) * du + (at[1] - from[1]) * dv) / (du * du + dv * dv);
        double share = Math.min(1, Math.max(0, along));
        double u = from[0] + share * du;
        double v = from[1] + share * dv;
        double distance = Math.hypot(u - at[0], v - at[1]);
        if (distance < least) {
          least = distance;
          double scale = 6 * u - 16 * v + 12;
          best = new double[] {9 * u / scale, 4 * v / scale};
        }
      }
    }
    return best;
  }

  private static double[] uv(Chromaticity c) {
    return uv(new double[] {c.x(), c.y()});
  }

  private static double[] uv(double[] c) {
    double scale = -2 * c[0] + 12 * c[1] + 3;
    return new double[] {4 * c[0] / scale, 9 * c[1] / scale};
  }

  private static double[] xyz(double[] c, double light) {
    return new double[] {light * c[0] / c[1], light, light * (1 - c[0] - c[1]) / c[1]};
  }

  // Cramer's rule for the drives of three emitters.
  private double[] solve(double[] wanted, int i, int j, int k) {
    double det = det(xyz[i], xyz[j], xyz[k]);
    return new double[] {
      det(wanted, xyz[j], xyz[k]) / det,
      det(xyz[i], wanted, xyz[k]) / det,
      det(xyz[i], xyz[j], wanted) / det
    };
  }

  private static double det(double[] a, double[] b, double[] c) {
    return a[0] * (b[1] * c[2] - b[2] * c[1])
        - b[0] * (a[1] * c[2] - a[2] * c[1])
        + c[0] * (a[1] * b[2] - a[2] * b[1]);
  }
}
