package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.document.Preset;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** The colours that a project uses. */
public final class ProjectColours {
  /** The most that are listed. */
  public static final int MAX = 24;

  private ProjectColours() {}

  /** The colours of cues and presets, those used most first, at most {@link #MAX}. */
  public static List<Colour> of(Project project) {
    Map<Colour, Integer> uses = new LinkedHashMap<>();
    Stream<Pattern> cues =
        project.scenes().stream()
            .flatMap(scene -> scene.tracks().stream())
            .flatMap(track -> track.cues().stream())
            .map(Cue::pattern);
    Stream.concat(cues, project.presets().stream().map(Preset::pattern))
        .flatMap(pattern -> pattern.colours().values().stream())
        .forEach(colour -> uses.merge(colour, 1, Integer::sum));
    return uses.entrySet().stream()
        .sorted(Map.Entry.<Colour, Integer>comparingByValue().reversed())
        .map(Map.Entry::getKey)
        .limit(MAX)
        .toList();
  }

  /**
   * The colour that the topmost cue gives a lamp at an instant: the first that its pattern is
   * given; empty where no cue covers it, or its pattern is given none.
   */
  public static Optional<Colour> at(Scene scene, String lamp, BigDecimal atMs) {
    List<Cue> covering = new ArrayList<>();
    for (Track track : scene.tracks()) {
      if (track.lamps().contains(lamp)) {
        track.cues().stream()
            .filter(cue -> cue.startMs().compareTo(atMs) <= 0 && cue.endMs().compareTo(atMs) > 0)
            .sorted(Comparator.comparing(Cue::startMs))
            .forEach(covering::add);
      }
    }
    return covering.isEmpty() ? Optional.empty() : of(covering.get(covering.size() - 1));
  }

  /** The first colour that the pattern of a cue is given. */
  public static Optional<Colour> of(Cue cue) {
    Map<String, Colour> colours = cue.pattern().colours();
    return Optional.ofNullable(colours.get("colour"))
        .or(() -> colours.values().stream().findFirst());
  }
}
