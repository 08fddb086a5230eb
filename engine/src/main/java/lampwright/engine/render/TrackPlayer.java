package lampwright.engine.render;

import java.util.ArrayList;
import java.util.Comparator;
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
  private final List<CuePlayer> cues = new ArrayList<>();
  private int firstOpen;

  /**
   * @param rows the rows of packages that a pattern on this track sees
   * @param mixers the mixer of each package
   */
  TrackPlayer(Track track, List<int[]> rows, Mixer[] mixers, FrameClock clock, Curve curve) {
    Map<List<Mixer>, List<int[]>> alike = new LinkedHashMap<>();
    for (int[] row : rows) {
      List<Mixer> seen = new ArrayList<>(row.length);
      for (int at : row) {
        seen.add(mixers[at]);
      }
      alike.computeIfAbsent(seen, s -> new ArrayList<>()).add(row);
    }
    Map<List<Mixer>, double[]> scratch = new LinkedHashMap<>();
    alike.keySet().forEach(seen -> scratch.put(seen, new double[seen.size() * Mixer.SLOTS]));
    List<Cue> inOrder = new ArrayList<>(track.cues());
    inOrder.sort(Comparator.comparing(Cue::startMs));
    for (Cue cue : inOrder) {
      List<CuePlayer.Row> painted = new ArrayList<>();
      alike.forEach(
          (seen, same) -> {
            PaintContext context = new PaintContext(seen, curve, Ratio.of(cue.lengthMs()));
            painted.add(new CuePlayer.Row(cue.pattern().painter(context), scratch.get(seen), same));
          });
      cues.add(new CuePlayer(cue, clock, curve, painted));
    }
  }

  /** Lays the light of every cue that covers a frame. */
  void play(long frame, Ratio timeMs, double[] light) {
    while (firstOpen < cues.size() && cues.get(firstOpen).endFrame() <= frame) {
      firstOpen++;
    }
    for (int i = firstOpen; i < cues.size() && cues.get(i).firstFrame() <= frame; i++) {
      if (frame < cues.get(i).endFrame()) {
        cues.get(i).play(timeMs, light);
      }
    }
  }

  /** Makes ready to be asked for any frame again. */
  void rewind() {
    firstOpen = 0;
  }
}
