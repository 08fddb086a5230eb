package lampwright.engine.meter;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a lamp flashes, measured from its light.
 *
 * @param flashes how many there are in the signal
 * @param groups how many groups of flashes there are; as many as flashes if each is alone
 * @param flashesPerGroup the usual number of flashes in a group, 1 if each is alone
 * @param regular whether all groups have that number of flashes and follow each other evenly; where
 *     a loop cuts a period at its seam, that one may differ
 * @param groupsPerMinute how often groups come; for single flashes this is the flash rate. None if
 *     the signal plays once and has only one group
 * @param onSeconds mean time that a flash lasts, at half of its height
 * @param gapSeconds mean dark time between the flashes of a group; 0 if each is alone
 * @param offSeconds mean dark time between groups; 0 if there is no next one
 * @param onShare share of the whole signal that is lit
 * @param groupOnSeconds mean time from the first to the last light of a group; light of a tenth of
 *     the greatest or more counts (UN Regulation 65, annex 5; not read again)
 * @param groupOffSeconds mean time from then to the first light of the next group; 0 if there is no
 *     next one
 */
public record FlashTrain(
    int flashes,
    int groups,
    int flashesPerGroup,
    boolean regular,
    OptionalDouble groupsPerMinute,
    double onSeconds,
    double gapSeconds,
    double offSeconds,
    double onShare,
    double groupOnSeconds,
    double groupOffSeconds) {

  /** Flashes per minute, each counted; none where {@link #groupsPerMinute} is. */
  public OptionalDouble flashesPerMinute() {
    return groupsPerMinute.isPresent()
        ? OptionalDouble.of(
            groupsPerMinute.getAsDouble() * (regular ? flashesPerGroup : (double) flashes / groups))
        : groupsPerMinute;
  }

  /**
   * The rate in words: {@code 90 flashes/min}, {@code 120 groups/min, 2 flashes each = 240
   * flashes/min}.
   */
  public String rateWords() {
    if (groupsPerMinute.isEmpty()) {
      return flashes == 1 ? "1 flash" : flashes + " flashes";
    }
    String all = Figures.short1(flashesPerMinute().getAsDouble()) + " flashes/min";
    if (!regular) {
      return all + ", uneven";
    }
    return flashesPerGroup == 1
        ? all
        : Figures.short1(groupsPerMinute.getAsDouble())
            + " groups/min, "
            + flashesPerGroup
            + " flashes each = "
            + all;
  }

  /**
   * Measures a signal.
   *
   * <p>A flash is a rise and a fall of at least 0.3 of the greatest light, from and to at most 0.4
   * of its own peak: one colour that fades into another stays above a half. Rises and falls that
   * both take longer than 0.5 s and a fifth of the time between flashes are swells, as of a slow
   * colour cycle, and no flashes. These bounds are our own. Flashes less than two thirds as far
   * apart as others form groups.
   *
   * @param light relative light of each frame, at least 0, held until the next; linear, and in any
   *     unit
   * @param framesPerSecond above 0 to 1,000
   * @param loop whether the first frame follows the last
   * @return none if the lamp doesn't flash
   * @throws IllegalArgumentException if there is no frame, or light below 0 or not a number
   */
  public static Optional<FlashTrain> measure(double[] light, double framesPerSecond, boolean loop) {
    return new FlashMeter(light, framesPerSecond, loop).measure();
  }
}
