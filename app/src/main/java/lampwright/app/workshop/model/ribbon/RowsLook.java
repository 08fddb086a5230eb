package lampwright.app.workshop.model.ribbon;

import com.google.common.collect.ImmutableSet;
import java.util.HashSet;
import java.util.Set;

/**
 * How the builder wants to see the rows. It is the window's, not the project's.
 *
 * @param unfolded ids of lamps whose duty curves are shown
 * @param folded groups of which only one ribbon is shown
 * @param height of the ribbons
 */
public record RowsLook(
    ImmutableSet<String> unfolded, ImmutableSet<String> folded, RowHeight height) {
  /** No curves, nothing folded. */
  public static final RowsLook FIRST =
      new RowsLook(ImmutableSet.of(), ImmutableSet.of(), RowHeight.MEDIUM);

  /** With the curves of a lamp shown, or no more. */
  public RowsLook toggleUnfolded(String lamp) {
    return new RowsLook(toggled(unfolded, lamp), folded, height);
  }

  /** With a group folded, or no more. */
  public RowsLook toggleFolded(String group) {
    return new RowsLook(unfolded, toggled(folded, group), height);
  }

  public RowsLook withFolded(Set<String> now) {
    return new RowsLook(unfolded, ImmutableSet.copyOf(now), height);
  }

  public RowsLook withHeight(RowHeight now) {
    return new RowsLook(unfolded, folded, now);
  }

  private static ImmutableSet<String> toggled(Set<String> of, String what) {
    Set<String> changed = new HashSet<>(of);
    if (!changed.remove(what)) {
      changed.add(what);
    }
    return ImmutableSet.copyOf(changed);
  }
}
