package lampwright.engine.render;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import lampwright.engine.light.Mixer;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Track;

/** What the patterns of a track see, for those who ask a pattern for its light themselves. */
public final class TrackRows {
  private TrackRows() {}

  /**
   * The rows of pixels, as the mixers of their pixels in order; rows that are alike once.
   *
   * @param track drives lamps of the rig
   */
  public static Set<List<Mixer>> of(Rig rig, Track track) {
    Mixer[] mixers = SceneRenderer.mixers(rig);
    Set<List<Mixer>> rows = new LinkedHashSet<>();
    for (int[] packages : SceneRenderer.rows(new FrameLayout(rig), track)) {
      List<Mixer> row = new ArrayList<>();
      for (int at : packages) {
        row.add(mixers[at]);
      }
      rows.add(row);
    }
    return rows;
  }
}
