package lampwright.engine.json;

import java.util.ArrayDeque;
import java.util.Deque;
import lampwright.engine.check.SafeText;
import org.jspecify.annotations.Nullable;

/** The path of a value in the file; text only when somebody asks. */
final class Where {
  static final Where ROOT = new Where(null, "");

  private final @Nullable Where parent;
  private final String step;

  private Where(@Nullable Where parent, String step) {
    this.parent = parent;
    this.step = step;
  }

  /** The field of this name, or at this path of names and indices, below this one. */
  Where field(String name) {
    return new Where(this, name);
  }

  /** The member of the list that is here. */
  Where index(int i) {
    return new Where(this, "[" + i + "]");
  }

  /** As in {@code scenes[0].tracks[2].lamps[0]}. */
  @Override
  public String toString() {
    Deque<String> steps = new ArrayDeque<>();
    for (Where at = this; at != null; at = at.parent) {
      steps.push(at.step);
    }
    StringBuilder path = new StringBuilder();
    for (String each : steps) {
      if (!path.isEmpty() && !each.startsWith("[")) {
        path.append('.');
      }
      path.append(SafeText.text(each, 200));
    }
    return path.toString();
  }
}
