package lampwright.exporters.proof;

import lampwright.engine.rig.Chain;
import lampwright.exporters.target.LineLimits;

/**
 * A chain as the proof reads it.
 *
 * @param gpio number of its pin
 * @param at where its bytes begin in a frame
 * @param bytes how many there are
 * @param limits of its bits
 * @param resetNs low time that ends a frame
 */
record ChainLine(int gpio, int at, int bytes, LineLimits limits, double resetNs) {
  static ChainLine of(Chain chain, int gpio, int at) {
    return new ChainLine(
        gpio,
        at,
        chain.bytes(),
        LineLimits.of(chain.type().line()),
        1000 * chain.type().line().resetUs());
  }
}
