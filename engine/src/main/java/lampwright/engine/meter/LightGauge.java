package lampwright.engine.meter;

import java.util.Optional;
import lampwright.engine.light.Chromaticity;

/**
 * One light that the eye sees, a pixel, an output or a whole lamp: first its greatest luminance is
 * learned, then its flashes are counted.
 */
final class LightGauge {
  private final FlashCounter flashes;
  private double x;
  private double y;
  private double z;
  private double peakX;
  private double peakY;
  private double peakZ;
  private int peakFrame;
  private boolean everRed;

  LightGauge(FlashCounter flashes) {
    this.flashes = flashes;
  }

  /** Its light is this from now on: CIE X, Y and Z. */
  void shine(double[] xyz) {
    x = xyz[0];
    y = xyz[1];
    z = xyz[2];
  }

  /** Adds its light to {@code into[at .. at + 2]}, times a factor. */
  void add(double factor, double[] into, int at) {
    into[at] += factor * x;
    into[at + 1] += factor * y;
    into[at + 2] += factor * z;
  }

  /** Learns from the light of a frame. */
  void learn(int frame) {
    if (y > peakY) {
      peakX = x;
      peakY = y;
      peakZ = z;
      peakFrame = frame;
    }
    everRed = everRed || FlashCounter.isRed(x, y, z);
  }

  /** Judges the light of a frame, once all are learned. */
  void judge(int frame) {
    if (peakY > 0) {
      flashes.light(frame, x, y, z, peakY, everRed);
    }
  }

  void nextRound() {
    flashes.nextRound();
  }

  /** Its greatest Y; 0 if it stays dark. */
  double peakY() {
    return peakY;
  }

  /** The first frame in which it shines brightest. */
  int peakFrame() {
    return peakFrame;
  }

  /** Its colour where it shines brightest; none if it stays dark. */
  Optional<Chromaticity> peakColour() {
    double sum = peakX + peakY + peakZ;
    return peakY > 0 ? Optional.of(new Chromaticity(peakX / sum, peakY / sum)) : Optional.empty();
  }

  /** How many changes of its luminance were found so far. */
  int changes() {
    return flashes.changes();
  }

  FlashCaution found(double framesPerSecond) {
    return flashes.found(framesPerSecond);
  }
}
