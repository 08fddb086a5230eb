package lampwright.engine.scene;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.ListType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.Shape;

/**
 * One row of a scene.
 *
 * @param lamps the ids of the lamps that it drives, at least one, each once
 * @param span what a pattern sees as its row of pixels
 * @param cues in any order; they play in order of start, then as listed
 */
public record Track(List<String> lamps, Span span, List<Cue> cues) {

  public static final Field<Track, List<String>> LAMPS =
      Field.required(
          "lamps",
          new ListType<>(ReferenceType.to("rig.lamps"), new ListLimit(1, 4096, "lamps")),
          Track::lamps,
          List.of());
  public static final Field<Track, Span> SPAN =
      Field.usual("span", ChoiceType.of("span", Span.class, Span::key), Track::span, Span.EACH);
  public static final Field<Track, List<Cue>> CUES =
      Field.list(
          "cues",
          new ListType<>(RecordType.of(Cue.SHAPE, Cue::standIn), new ListLimit(0, 100_000, "cues")),
          Track::cues);

  public static final Shape<Track> SHAPE = Shape.of("track", Track.class, LAMPS, SPAN, CUES);

  public Track {
    lamps = List.copyOf(lamps);
    cues = List.copyOf(cues);
    Checks checks = SHAPE.check(lamps, span, cues);
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
}
