package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.field.Draft;
import lampwright.engine.pattern.Times;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** Reads scenes: their ids, and the lamps that tracks name. */
final class SceneReader {
  private static final BigDecimal LONGEST = BigDecimal.valueOf(Times.MAX_MS);

  private final ShapeReader reader;
  private final Names scenes;
  private final Names lamps;

  SceneReader(ShapeReader reader, Names scenes, Names lamps) {
    this.reader = reader;
    this.scenes = scenes;
    this.lamps = lamps;
  }

  Scene read(Located at) {
    Fields f = at.fields();
    f.expect(Scene.SHAPE.names());
    String id = scenes.read(f);
    List<Track> tracks = RigReader.members(f, Scene.TRACKS, this::track);
    Draft<Scene> draft = Scene.SHAPE.draft().set(Scene.ID, id).set(Scene.TRACKS, tracks);
    reader.fill(Scene.SHAPE, f, draft);
    Scene scene = f.build(draft::make, () -> standIn(scenes.ofStandIn(id, f), tracks));
    f.close();
    return scene;
  }

  // So long that no cue runs past its end.
  private static Scene standIn(String id, List<Track> tracks) {
    return Scene.SHAPE
        .draft()
        .set(Scene.ID, id)
        .set(Scene.LENGTH_MS, LONGEST)
        .set(Scene.FRAMES_PER_SECOND, BigDecimal.ONE)
        .set(Scene.TRACKS, tracks)
        .make();
  }

  private Track track(Located at) {
    Fields f = at.fields();
    List<String> named = new ArrayList<>();
    for (Located item : RigReader.members(f, Track.LAMPS)) {
      Optional<String> name = item.as(ValueKind.TEXT);
      if (name.isEmpty()) {
        f.breaks(Track.LAMPS.name());
      }
      named.add(name.orElse(lamps.standIn(named.size())));
    }
    Draft<Track> draft = Track.SHAPE.draft().set(Track.LAMPS, named);
    reader.fill(Track.SHAPE, f, draft);
    Track track = f.build(draft::make, () -> draft.set(Track.LAMPS, namedOnce(named)).make());
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
}
