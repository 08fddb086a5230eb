package lampwright.app.workshop.edit;

import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;

/** Changes of patterns. */
public final class PatternEdits {
  private PatternEdits() {}

  /** The same light by another kind of pattern; phase is kept where both repeat by themselves. */
  public static Pattern turned(Pattern from, String kind) {
    Pattern fresh = Patterns.fresh(kind, from.look());
    boolean both = from.period().isPresent() && fresh.period().isPresent();
    return from.startPhase().filter(phase -> both).map(fresh::withPhase).orElse(fresh);
  }
}
