package lampwright.engine.meter;

import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.LineTiming;

/**
 * How long one frame of a chain takes on its data line.
 *
 * @param chain the chain's id
 * @param pixels how many it has
 * @param pixelUs time of one pixel's bits, us
 * @param resetUs the low time after the last bit, us
 */
public record WireTime(String chain, int pixels, double pixelUs, double resetUs) {
  private static final int BITS = 8;
  private static final double US_PER_NS = 1e-3;
  private static final double US_PER_SECOND = 1e6;

  public WireTime {
    Checks.of("wire time")
        .range("pixels", pixels, 1, Chain.MAX_PIXELS)
        .range("pixelUs", pixelUs, 1e-3, 1e9)
        .range("resetUs", resetUs, 0, 1e9)
        .done();
  }

  /** The wire time of a chain at the nominal times of its pixel type. */
  public static WireTime of(Chain chain) {
    LineTiming line = chain.type().line();
    // The longer of the two bits, so that no frame takes longer than is said.
    return of(chain, Math.max(line.nominal(false).bitNs(), line.nominal(true).bitNs()));
  }

  /**
   * The wire time of a chain whose bits are known.
   *
   * @param bitNs length of the longer bit, ns
   */
  public static WireTime of(Chain chain, double bitNs) {
    LineTiming line = chain.type().line();
    double pixelUs = chain.order().size() * BITS * bitNs * US_PER_NS;
    return new WireTime(chain.id(), chain.pixels(), pixelUs, line.resetUs());
  }

  /** Bits and reset of one frame, us. */
  public double frameUs() {
    return pixels * pixelUs + resetUs;
  }

  /** The share of a frame's time that the line is busy; above 1 it does not fit. */
  public double share(double framesPerSecond) {
    return frameUs() * framesPerSecond / US_PER_SECOND;
  }

  /** The highest frame rate that this chain alone can follow, frames/s. */
  public double highestFramesPerSecond() {
    return US_PER_SECOND / frameUs();
  }

  /** The most pixels that a chain of this type can have at a frame rate; 0 if none. */
  public int longestChain(double framesPerSecond) {
    double room = US_PER_SECOND / framesPerSecond - resetUs;
    return (int) Math.max(0, Math.floor(room / pixelUs + 1e-9));
  }

  /**
   * Time of one frame where a controller serves several chains in turn, us. The reset of a chain
   * runs while the others are served; only the last one, and what the others leave of the longest,
   * is waited for.
   */
  public static double inTurnUs(List<WireTime> chains) {
    double bits = chains.stream().mapToDouble(c -> c.pixels() * c.pixelUs()).sum();
    double waited = bits;
    double sent = 0;
    for (WireTime chain : chains) {
      sent += chain.pixels() * chain.pixelUs();
      waited = Math.max(waited, sent + chain.resetUs());
    }
    return waited;
  }
}
