package lampwright.engine.scene;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;

/**
 * One row of a scene.
 *
 * @param lamps the ids of the lamps that it drives, at least one, each once
 * @param span what a pattern sees as its row of pixels
 * @param cues in any order; they play in order of start, then as listed
 */
public record Track(List<String> lamps, Span span, List<Cue> cues) {
  public static final ListLimit LAMPS = new ListLimit(1, 4096, "lamps");
  public static final ListLimit CUES = new ListLimit(0, 100_000, "cues");

  public Track {
    lamps = List.copyOf(lamps);
    cues = List.copyOf(cues);
    Checks checks = Checks.of("track").size("lamps", lamps, LAMPS).size("cues", cues, CUES);
    Set<String> named = new HashSet<>();
    for (int i = 0; i < lamps.size(); i++) {
      if (!named.add(lamps.get(i))) {
        checks.add("lamps[" + i + "]", lamps.get(i), "is named twice");
      }
    }
    checks.done();
  }

  /** A track whose patterns see each lamp alone. */
  public static Track of(List<String> lamps, Cue... cues) {
    return new Track(lamps, Span.EACH, List.of(cues));
  }

  public Track withLamps(List<String> newLamps) {
    return new Track(newLamps, span, cues);
  }

  public Track withSpan(Span newSpan) {
    return new Track(lamps, newSpan, cues);
  }

  public Track withCues(List<Cue> newCues) {
    return new Track(lamps, span, newCues);
  }
}
