package lampwright.app.workshop.model.shelf;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A card on the shelf.
 *
 * @param title for people
 * @param hint what can be set, or where the presets are kept
 * @param pattern the kind of pattern; empty on the card of the builder's own presets
 * @param presets beneath it
 */
public record ShelfCard(
    String title, String hint, Optional<ShelfEntry> pattern, List<ShelfEntry> presets) {
  public ShelfCard {
    presets = List.copyOf(presets);
  }

  /** All that can be taken from it. */
  public List<ShelfEntry> entries() {
    return Stream.concat(pattern.stream(), presets.stream()).toList();
  }
}
