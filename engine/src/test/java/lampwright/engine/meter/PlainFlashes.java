package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;

/**
 * The flash caution once more, written from the words of its rule and as plainly as can be: all
 * frames at hand, every pair of frames looked at, every second tried.
 */
final class PlainFlashes {
  // CIE 15: u' and v' of D65 (0.3127, 0.3290), which stand for black.
  private static final double D65_U = 4 * 0.3127 / (-2 * 0.3127 + 12 * 0.3290 + 3);
  private static final double D65_V = 9 * 0.3290 / (-2 * 0.3127 + 12 * 0.3290 + 3);
  private static final double ROUNDING = 1e-9;

  /** A change, and whether it goes up, or to red. */
  private record Change(int frame, boolean up) {}

  /** One frame. */
  private record State(double luminance, boolean red, double u, double v) {}

  private interface Rule {
    boolean isChange(State from, State to, boolean up);
  }

  private PlainFlashes() {}

  static int general(double[] xyz, double fps, boolean loop) {
    return flashes(xyz, fps, loop, PlainFlashes::isGeneral);
  }

  static int red(double[] xyz, double fps, boolean loop) {
    return flashes(xyz, fps, loop, PlainFlashes::isRed);
  }

  private static boolean isGeneral(State from, State to, boolean up) {
    double change = up ? to.luminance - from.luminance : from.luminance - to.luminance;
    double darker = Math.min(from.luminance, to.luminance);
    return change >= 0.1 - ROUNDING && darker < 0.80 - ROUNDING;
  }

  private static boolean isRed(State from, State to, boolean up) {
    double du = to.u - from.u;
    double dv = to.v - from.v;
    return (up ? to.red : from.red) && Math.sqrt(du * du + dv * dv) > 0.2 + ROUNDING;
  }

  private static int flashes(double[] xyz, double fps, boolean loop, Rule rule) {
    List<State> states = states(xyz);
    int frames = states.size();
    int second = (int) Math.ceil(fps);
    // A loop: once round to come from its end, once round to be judged, and a second on.
    int played = loop ? 2 * frames + second : frames;
    List<State> play = new ArrayList<>();
    for (int i = 0; i < played; i++) {
      play.add(states.get(i % frames));
    }
    List<Change> changes = changes(play, rule);
    int most = 0;
    for (int start = loop ? frames : 0; start < (loop ? 2 * frames : frames); start++) {
      List<Change> inside = new ArrayList<>();
      for (Change change : changes) {
        if (change.frame >= start && change.frame < start + second) {
          inside.add(change);
        }
      }
      most = Math.max(most, longestRun(inside) / 2);
    }
    return most;
  }

  private static List<State> states(double[] xyz) {
    double greatest = 0;
    for (int i = 1; i < xyz.length; i += 3) {
      greatest = Math.max(greatest, xyz[i]);
    }
    List<State> states = new ArrayList<>();
    for (int i = 0; i < xyz.length; i += 3) {
      double x = xyz[i];
      double y = xyz[i + 1];
      double z = xyz[i + 2];
      if (greatest == 0 || y / greatest < 0.1 - ROUNDING) {
        states.add(new State(greatest == 0 ? 0 : y / greatest, false, D65_U, D65_V));
        continue;
      }
      // IEC 61966-2-1.
      double r = 3.2406 * x - 1.5372 * y - 0.4986 * z;
      double g = -0.9689 * x + 1.8758 * y + 0.0415 * z;
      double b = 0.0557 * x - 0.2040 * y + 1.0570 * z;
      boolean red = r >= 0.8 * (r + g + b) - ROUNDING * (r + g + b);
      double scale = x + 15 * y + 3 * z;
      states.add(new State(y / greatest, red, 4 * x / scale, 9 * y / scale));
    }
    return states;
  }

  private static List<Change> changes(List<State> play, Rule rule) {
    List<Change> changes = new ArrayList<>();
    int since = 0;
    for (int now = 1; now < play.size(); now++) {
      for (boolean up : new boolean[] {true, false}) {
        boolean other = changes.isEmpty() || changes.get(changes.size() - 1).up != up;
        boolean completes = false;
        for (int from = since; other && from < now; from++) {
          completes |= rule.isChange(play.get(from), play.get(now), up);
        }
        if (completes) {
          changes.add(new Change(now, up));
          since = now;
          break;
        }
      }
    }
    return changes;
  }

  private static int longestRun(List<Change> changes) {
    int longest = 0;
    int run = 0;
    for (int i = 0; i < changes.size(); i++) {
      run = i > 0 && changes.get(i).up != changes.get(i - 1).up ? run + 1 : 1;
      longest = Math.max(longest, run);
    }
    return longest;
  }
}
