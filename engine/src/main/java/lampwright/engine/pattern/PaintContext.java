package lampwright.engine.pattern;

import java.util.List;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Ratio;

/**
 * What a pattern is told about where it plays.
 *
 * @param mixers one for each pixel that the pattern sees, in order; a driver output is one pixel
 * @param curve the rig's curve, for levels
 * @param lengthMs the length of the cue
 */
public record PaintContext(List<Mixer> mixers, Curve curve, Ratio lengthMs) {
  public PaintContext {
    mixers = List.copyOf(mixers);
  }

  /** How many pixels the pattern sees. */
  public int count() {
    return mixers.size();
  }

  /** A colour as each pixel mixes it. */
  Mix[] mixes(Colour colour) {
    Mix[] mixes = new Mix[count()];
    for (int k = 0; k < mixes.length; k++) {
      // Neighbours are mostly of one type, and a matched colour is dear to mix.
      boolean alike = k > 0 && mixers.get(k) == mixers.get(k - 1);
      mixes[k] = alike ? mixes[k - 1] : mixers.get(k).mix(colour);
    }
    return mixes;
  }

  /** A look as each pixel mixes it: full is the light of its level. */
  Mix[] mixes(Look look) {
    Mix[] full = mixes(look.colour());
    double light = curve.light(look.level());
    Mix[] mixes = new Mix[full.length];
    for (int k = 0; k < full.length; k++) {
      mixes[k] = k > 0 && full[k] == full[k - 1] ? mixes[k - 1] : full[k].dimmed(light);
    }
    return mixes;
  }

  /** The drives of a look: four for each pixel. */
  double[] drives(Look look) {
    double[] drives = new double[count() * Mixer.SLOTS];
    double light = curve.light(look.level());
    Mix[] mixes = mixes(look.colour());
    for (int k = 0; k < mixes.length; k++) {
      mixes[k].write(light, drives, k * Mixer.SLOTS);
    }
    return drives;
  }
}
