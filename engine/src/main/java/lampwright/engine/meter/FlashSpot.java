package lampwright.engine.meter;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where most flashes are.
 *
 * @param lamp the lamp's id; none for all lamps together
 * @param pixel the pixel's place in the lamp, from 0; none for the whole lamp
 * @param worst its flashes in the second that has most
 */
public record FlashSpot(Optional<String> lamp, OptionalInt pixel, FlashCaution.Worst worst) {
  /** Of two that are equal the first. */
  FlashSpot orWorse(FlashSpot other) {
    return other.worst.flashes() > worst.flashes() ? other : this;
  }

  /** In words: {@code bar-left, pixel 3}; of all lamps {@code all lamps together}. */
  public String words() {
    return lamp.map(id -> id + (pixel.isPresent() ? ", pixel " + pixel.getAsInt() : ""))
        .orElse("all lamps together");
  }
}
