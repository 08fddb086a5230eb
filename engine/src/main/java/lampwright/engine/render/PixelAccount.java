package lampwright.engine.render;

import java.util.List;
import java.util.Optional;
import lampwright.engine.light.EmitterKind;

/**
 * How the bytes of one pixel of a lamp come about in one frame: every number as the renderer had
 * it. Lists are in the order of its bytes; a driver output has one.
 *
 * @param frame of the scene, from 0
 * @param timeMs of the frame, from the start of the scene
 * @param pixel of the lamp, from 0
 * @param layers the cues on it that cover the frame, the lowest first
 * @param brightnessCap by which every drive of the rig is multiplied
 * @param sceneFactor by which the scene is scaled to meet the supply's limit
 * @param frameFactor by which this frame is
 * @param bytes what is sent
 */
public record PixelAccount(
    int frame,
    double timeMs,
    int pixel,
    List<Layer> layers,
    double brightnessCap,
    double sceneFactor,
    double frameFactor,
    List<ByteStep> bytes) {
  public PixelAccount {
    layers = List.copyOf(layers);
    bytes = List.copyOf(bytes);
  }

  /**
   * One cue.
   *
   * @param track its place in the scene, from 0
   * @param cue its place in the list of its track, from 0
   * @param sinceStartMs time since its start
   * @param period the time after which its pattern begins again, and where in it the frame is; none
   *     if it does not repeat
   * @param levelLight the light of its level; what the pattern makes of it over time is in {@code
   *     painted}
   * @param fullColour drives of its colour at all light, without level and time
   * @param faded how far its fades have it, 0 to 1
   * @param a the light of that
   * @param painted drives that the pattern gives; empty if a cue above hides it, so that it is not
   *     painted at all
   * @param under drives before it is laid
   * @param result drives after
   */
  public record Layer(
      int track,
      int cue,
      double sinceStartMs,
      Optional<Place> period,
      double levelLight,
      List<Double> fullColour,
      double faded,
      double a,
      List<Double> painted,
      List<Double> under,
      List<Double> result) {
    public Layer {
      fullColour = List.copyOf(fullColour);
      painted = List.copyOf(painted);
      under = List.copyOf(under);
      result = List.copyOf(result);
    }

    /** Whether a cue above it covers it wholly. */
    public boolean isHidden() {
      return painted.isEmpty();
    }
  }

  /** A place in a period, ms. */
  public record Place(double periodMs, double atMs) {}

  /**
   * One byte.
   *
   * @param emitter of a pixel; none for a driver output
   * @param at its place in the frame
   * @param mixed drive after all cues
   * @param felt drive after the lamp's warm-up
   * @param capped drive times all factors
   * @param carried what the frame before left over by dithering, in steps of a byte
   * @param duty the byte, 0 to 255
   */
  public record ByteStep(
      Optional<EmitterKind> emitter,
      int at,
      double mixed,
      double felt,
      double capped,
      double carried,
      int duty) {}
}
