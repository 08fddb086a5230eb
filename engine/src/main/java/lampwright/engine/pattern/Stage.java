package lampwright.engine.pattern;

import java.util.List;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mixer;

/**
 * What a pattern is told about where it plays.
 *
 * @param mixers one for each pixel that the pattern sees, in order; a driver output is one pixel
 * @param curve the rig's curve, for levels
 * @param lengthMs the length of the cue
 */
public record Stage(List<Mixer> mixers, Curve curve, Ratio lengthMs) {
  public Stage {
    mixers = List.copyOf(mixers);
  }

  /** How many pixels the pattern sees. */
  public int count() {
    return mixers.size();
  }

  /** The drives of a colour at full level: four for each pixel. */
  double[] drives(Colour colour) {
    double[] drives = new double[count() * Mixer.SLOTS];
    for (int k = 0; k < count(); k++) {
      int at = k * Mixer.SLOTS;
      // Neighbours are mostly of one type, and a matched colour is dear to mix.
      if (k > 0 && mixers.get(k) == mixers.get(k - 1)) {
        System.arraycopy(drives, at - Mixer.SLOTS, drives, at, Mixer.SLOTS);
      } else {
        mixers.get(k).mix(colour, drives, at);
      }
    }
    return drives;
  }

  /** The drives of a look: four for each pixel. */
  double[] drives(Look look) {
    double[] drives = drives(look.colour());
    double light = curve.light(look.level());
    for (int i = 0; i < drives.length; i++) {
      drives[i] *= light;
    }
    return drives;
  }
}
