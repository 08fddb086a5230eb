package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/**
 * What is done to the cues of several lamps at once. A track that drives several lamps, each alone,
 * is parted first into one for each; no light changes by that. Tracks whose lamps are joined as one
 * strip are left as they are.
 */
public final class LampCueEdits {
  private static final MathContext DIGITS = new MathContext(6);

  private LampCueEdits() {}

  /** Gives the cues of n lamps the phases 0, 1/n, 2/n and so on, to six digits. */
  public static Scene spreadPhases(Scene scene, List<String> lamps) {
    BigDecimal count = BigDecimal.valueOf(lamps.size());
    return eachCue(
        scene,
        lamps,
        (k, cue) ->
            Cue.PATTERN.with(
                cue, cue.pattern().withPhase(BigDecimal.valueOf(k).divide(count, DIGITS))));
  }

  /** Lets the cues of each lamp start a step later than those of the lamp before. */
  public static Scene stagger(Scene scene, List<String> lamps, BigDecimal stepMs) {
    return eachCue(
        scene,
        lamps,
        (k, cue) ->
            Cue.START_MS.with(cue, cue.startMs().add(stepMs.multiply(BigDecimal.valueOf(k)))));
  }

  /**
   * Gives the first lamp the cues of the last, the second those of the last but one, and so on;
   * what turns or runs turns the other way.
   */
  public static Scene mirror(Scene scene, List<String> lamps) {
    return eachTrack(
        scene,
        lamps,
        (k, track) ->
            List.of(
                new Track(
                    List.of(lamps.get(lamps.size() - 1 - k)),
                    track.span(),
                    track.cues().stream()
                        .map(cue -> Cue.PATTERN.with(cue, mirrored(cue.pattern())))
                        .toList())));
  }

  /** Gives other lamps the cues of one lamp, in place of their own. */
  public static Scene copyToLamps(Scene scene, String from, List<String> to) {
    List<String> others = to.stream().filter(lamp -> !lamp.equals(from)).distinct().toList();
    List<String> all = new ArrayList<>(others);
    all.add(from);
    return eachTrack(
        scene,
        all,
        (k, track) ->
            all.get(k).equals(from)
                ? Stream.concat(
                        Stream.of(track),
                        others.stream().map(lamp -> Track.LAMPS.with(track, List.of(lamp))))
                    .toList()
                : List.of());
  }

  /**
   * Adds the cues that lamps have in one scene to another, above its own, at the same times; those
   * that would begin at or past its end are left out.
   */
  public static Scene copyToScene(Scene from, Scene to, Collection<String> lamps) {
    List<Track> tracks = new ArrayList<>(to.tracks());
    for (Track track : apart(from, lamps).tracks()) {
      List<Cue> cues =
          track.cues().stream().filter(cue -> cue.startMs().compareTo(to.lengthMs()) < 0).toList();
      if (lamps.containsAll(track.lamps()) && !cues.isEmpty()) {
        tracks.add(Track.CUES.with(track, cues));
      }
    }
    return Scene.TRACKS.with(to, tracks);
  }

  /** Parts tracks that drive several lamps, each alone, so that each of these has its own. */
  static Scene apart(Scene scene, Collection<String> lamps) {
    List<Track> tracks = new ArrayList<>();
    for (Track track : scene.tracks()) {
      if (track.span() != Span.EACH || track.lamps().stream().noneMatch(lamps::contains)) {
        tracks.add(track);
        continue;
      }
      List<String> rest = track.lamps().stream().filter(l -> !lamps.contains(l)).toList();
      if (!rest.isEmpty()) {
        tracks.add(Track.LAMPS.with(track, rest));
      }
      track.lamps().stream()
          .filter(lamps::contains)
          .forEach(lamp -> tracks.add(Track.LAMPS.with(track, List.of(lamp))));
    }
    return Scene.TRACKS.with(scene, tracks);
  }

  private static Scene eachCue(
      Scene scene, List<String> lamps, BiFunction<Integer, Cue, Cue> change) {
    return eachTrack(
        scene,
        lamps,
        (k, track) ->
            List.of(
                Track.CUES.with(
                    track, track.cues().stream().map(cue -> change.apply(k, cue)).toList())));
  }

  /** Puts tracks in the place of each that drives one of these lamps alone; the others stay. */
  private static Scene eachTrack(
      Scene scene, List<String> lamps, BiFunction<Integer, Track, List<Track>> change) {
    List<Track> tracks = new ArrayList<>();
    for (Track track : apart(scene, lamps).tracks()) {
      int k = track.lamps().size() == 1 ? lamps.indexOf(track.lamps().get(0)) : -1;
      tracks.addAll(k < 0 ? List.of(track) : change.apply(k, track));
    }
    return Scene.TRACKS.with(scene, tracks);
  }

  private static Pattern mirrored(Pattern pattern) {
    if (pattern instanceof RotatingBeacon beacon) {
      return RotatingBeacon.SHAPE.with(beacon, "clockwise", !beacon.clockwise());
    } else if (pattern instanceof ColourCycle cycle) {
      return ColourCycle.SHAPE.with(cycle, "backwards", !cycle.backwards());
    }
    return pattern;
  }
}
