package lampwright.app.workshop.model;

import java.util.List;

/**
 * What a form shows: its title and values in groups.
 *
 * @param structure equal for forms with the same slots in the same order, whatever their values: a
 *     window that shows one of them need not be built anew for another
 * @param title for people
 * @param groups in order
 */
public record Form(Object structure, String title, List<Group> groups) {
  /**
   * Values that belong together.
   *
   * @param key of its title's text
   */
  public record Group(String key, List<Slot<?>> slots) {
    public Group {
      slots = List.copyOf(slots);
    }
  }

  public Form {
    groups = List.copyOf(groups);
  }

  /** Reads all values anew. */
  public void refresh() {
    groups.forEach(group -> group.slots().forEach(Slot::refresh));
  }
}
