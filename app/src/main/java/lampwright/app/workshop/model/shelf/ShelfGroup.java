package lampwright.app.workshop.model.shelf;

import java.util.Optional;
import lampwright.engine.document.PresetUse;

/**
 * What the shelf is narrowed to: all, a use, or the builder's own presets.
 *
 * @param use empty for all and for own
 * @param own whether it is the builder's own
 */
public record ShelfGroup(Optional<PresetUse> use, boolean own) {
  public static final ShelfGroup ALL = new ShelfGroup(Optional.empty(), false);
  public static final ShelfGroup OWN = new ShelfGroup(Optional.empty(), true);

  /** What is for a use. */
  public static ShelfGroup of(PresetUse use) {
    return new ShelfGroup(Optional.of(use), false);
  }

  /** The key of its texts. */
  public String key() {
    return use.map(PresetUse::key).orElse(own ? "own" : "all");
  }

  boolean holds(ShelfEntry entry) {
    return own ? entry.own() : use.map(entry.uses()::contains).orElse(true);
  }
}
