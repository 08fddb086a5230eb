package lampwright.engine.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.PaintContext;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Ratio;

/** One track made ready. Asked for frames in rising order it passes over the cues that are done. */
final class TrackPlayer {
  private final int place;
  private final CuePlayer[] cues;
  private int firstOpen;

  /**
   * @param place where it is in the list of the scene
   * @param rows the rows of packages that a pattern on this track sees
   * @param mixers the mixer of each package
   * @param scratch room for the drives of as many pixels as the rig has; one cue after another may
   *     use it
   */
  TrackPlayer(
      int place,
      Track track,
      List<int[]> rows,
      Mixer[] mixers,
      double[] scratch,
      FrameClock clock,
      Curve curve) {
    this.place = place;
    Map<List<Mixer>, List<int[]>> alike = new LinkedHashMap<>();
    for (int[] row : rows) {
      List<Mixer> seen = new ArrayList<>(row.length);
      for (int at : row) {
        seen.add(mixers[at]);
      }
      alike.computeIfAbsent(seen, s -> new ArrayList<>()).add(row);
    }
    Map<List<Mixer>, PackageRuns> runs = new LinkedHashMap<>();
    alike.forEach((seen, same) -> runs.put(seen, new PackageRuns(same)));
    List<CuePlayer> players = new ArrayList<>();
    List<Cue> all = track.cues();
    List<Integer> inOrder = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      inOrder.add(i);
    }
    // Not Comparator.comparing: Java makes code for it at each start (decision 42).
    inOrder.sort((a, b) -> all.get(a).startMs().compareTo(all.get(b).startMs()));
    for (int i : inOrder) {
      Cue cue = all.get(i);
      List<CuePlayer.Row> painted = new ArrayList<>();
      alike.forEach(
          (seen, same) -> {
            PaintContext context = new PaintContext(seen, curve, Ratio.of(cue.lengthMs()));
            painted.add(new CuePlayer.Row(cue.pattern().painter(context), runs.get(seen)));
          });
      players.add(new CuePlayer(i, cue, clock, curve, painted, scratch));
    }
    cues = players.toArray(CuePlayer[]::new);
  }

  /** Where it is in the list of the scene. */
  int place() {
    return place;
  }

  /** Whether a cue is one of its own. */
  boolean has(CuePlayer cue) {
    return Arrays.asList(cues).contains(cue);
  }

  /** Adds every cue that covers a frame. */
  void gather(long frame, Layers layers) {
    while (firstOpen < cues.length && cues[firstOpen].endFrame() <= frame) {
      firstOpen++;
    }
    for (int i = firstOpen; i < cues.length; i++) {
      if (frame < cues[i].firstFrame()) {
        layers.changeAt(cues[i].firstFrame());
        return;
      }
      if (frame < cues[i].endFrame()) {
        layers.add(cues[i]);
        layers.changeAt(cues[i].nextChange(frame));
      }
    }
  }

  /** Makes ready to be asked for any frame again. */
  void rewind() {
    firstOpen = 0;
  }
}
