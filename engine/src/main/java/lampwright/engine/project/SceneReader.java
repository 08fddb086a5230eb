package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.DECIMAL;
import static lampwright.engine.project.ValueKind.FLAG;
import static lampwright.engine.project.ValueKind.TEXT;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.Times;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/** Reads scenes. */
final class SceneReader {
  private static final ValueKind<Dither> DITHER = ValueKind.choice(Dither.values(), Dither::key);
  private static final ValueKind<Span> SPAN = ValueKind.choice(Span.values(), Span::key);
  private static final ValueKind<Blend> BLEND = ValueKind.choice(Blend.values(), Blend::key);
  private static final BigDecimal LONGEST = BigDecimal.valueOf(Times.MAX_MS);

  private final Names scenes;
  private final Names lamps;

  SceneReader(Names scenes, Names lamps) {
    this.scenes = scenes;
    this.lamps = lamps;
  }

  Scene read(Located at) {
    Fields f = at.fields().expect("id", "lengthMs", "framesPerSecond", "loop", "dither");
    String id = scenes.read(f);
    List<Track> tracks = f.list("tracks", Scene.TRACKS).stream().map(this::track).toList();
    Scene scene =
        f.build(
            () ->
                new Scene(
                    id,
                    f.required("lengthMs", DECIMAL, BigDecimal.ONE),
                    f.optional("framesPerSecond", DECIMAL, Scene.DEFAULT_FRAMES_PER_SECOND),
                    f.optional("loop", FLAG, Scene.DEFAULT_LOOP),
                    f.optional("dither", DITHER, Dither.OFF),
                    tracks),
            () -> standIn(scenes.ofStandIn(id, f), tracks));
    f.close();
    return scene;
  }

  // So long that no cue runs past its end.
  private static Scene standIn(String id, List<Track> tracks) {
    return new Scene(id, LONGEST, BigDecimal.ONE, true, Dither.OFF, tracks);
  }

  private Track track(Located at) {
    Fields f = at.fields();
    List<String> named = new ArrayList<>();
    for (Located item : f.requiredList("lamps", Track.LAMPS)) {
      Optional<String> name = item.as(TEXT);
      if (name.isEmpty()) {
        f.breaks("lamps");
      }
      named.add(name.orElse(lamps.standIn(named.size())));
    }
    Span span = f.optional("span", SPAN, Span.EACH);
    List<Cue> cues = f.list("cues", Track.CUES).stream().map(SceneReader::cue).toList();
    Track track =
        f.build(() -> new Track(named, span, cues), () -> new Track(namedOnce(named), span, cues));
    f.close();
    return track;
  }

  private List<String> namedOnce(List<String> named) {
    Set<String> once = new HashSet<>();
    List<String> names = new ArrayList<>();
    for (int i = 0; i < named.size(); i++) {
      names.add(once.add(named.get(i)) ? named.get(i) : lamps.standIn(i));
    }
    if (names.isEmpty()) {
      names.add(lamps.standIn(0));
    }
    return names;
  }

  private static Cue cue(Located at) {
    Fields f = at.fields().expect("startMs", "lengthMs", "fadeInMs", "fadeOutMs", "blend");
    Pattern pattern = pattern(f);
    Cue cue =
        f.build(
            () ->
                new Cue(
                    f.optional("startMs", DECIMAL, BigDecimal.ZERO),
                    f.required("lengthMs", DECIMAL, BigDecimal.ONE),
                    f.optional("fadeInMs", DECIMAL, BigDecimal.ZERO),
                    f.optional("fadeOutMs", DECIMAL, BigDecimal.ZERO),
                    f.optional("blend", BLEND, Blend.COVER),
                    pattern),
            () -> Cue.of(0, 1, pattern));
    f.close();
    return cue;
  }

  private static Pattern pattern(Fields f) {
    Optional<Located> at = f.find("pattern");
    if (at.isEmpty()) {
      f.missing("pattern", ValueKind.OBJECT.allowed());
      return new Steady(Look.DEFAULT);
    }
    return PatternReader.read(at.get());
  }
}
