package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/** What hands do to cues: every method gives the changed scene and where the cues are then. */
public final class CueEdits {
  /**
   * A scene after an edit.
   *
   * @param cues the cues concerned, where they are now
   */
  public record Changed(Scene scene, List<CueRef> cues) {
    public Changed {
      cues = List.copyOf(cues);
    }
  }

  /**
   * A cue as it was copied.
   *
   * @param lamps of its track
   * @param span of its track
   */
  public record Copied(List<String> lamps, Span span, Cue cue) {
    public Copied {
      lamps = List.copyOf(lamps);
    }
  }

  private static final BigDecimal LEAST_MS = BigDecimal.ONE;

  private CueEdits() {}

  /**
   * Places a cue for these lamps: on a track that drives just them and is free there, or else on a
   * new one above all others.
   */
  public static Changed add(Scene scene, List<String> lamps, Span span, Cue cue) {
    List<Track> tracks = new ArrayList<>(scene.tracks());
    int at = freeTrack(scene, lamps, span, cue).orElse(tracks.size());
    if (at == tracks.size()) {
      tracks.add(new Track(lamps, span, List.of()));
    }
    List<Cue> cues = new ArrayList<>(tracks.get(at).cues());
    cues.add(cue);
    tracks.set(at, tracks.get(at).withCues(cues));
    return new Changed(scene.withTracks(tracks), List.of(new CueRef(at, cues.size() - 1)));
  }

  /** Removes cues, and tracks that are left without any. */
  public static Changed remove(Scene scene, Collection<CueRef> refs) {
    List<Track> tracks = new ArrayList<>();
    for (int t = 0; t < scene.tracks().size(); t++) {
      Track track = scene.tracks().get(t);
      List<Cue> kept = new ArrayList<>();
      for (int c = 0; c < track.cues().size(); c++) {
        if (!refs.contains(new CueRef(t, c))) {
          kept.add(track.cues().get(c));
        }
      }
      if (!kept.isEmpty() || track.cues().isEmpty()) {
        tracks.add(track.withCues(kept));
      }
    }
    return new Changed(scene.withTracks(tracks), List.of());
  }

  /** Shifts cues in time, all by the same, none to before the scene's start. */
  public static Changed shift(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    BigDecimal first =
        refs.stream()
            .flatMap(ref -> ref.in(scene).stream())
            .map(Cue::startMs)
            .min(Comparator.naturalOrder())
            .orElse(BigDecimal.ZERO);
    BigDecimal by = byMs.max(first.negate());
    return each(scene, refs, cue -> cue.withStartMs(cue.startMs().add(by)));
  }

  /** Moves the starts of cues and leaves their ends; they keep at least a millisecond. */
  public static Changed stretchStart(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(
        scene,
        refs,
        cue -> {
          BigDecimal latest = cue.endMs().subtract(LEAST_MS);
          BigDecimal start = cue.startMs().add(byMs).max(BigDecimal.ZERO).min(latest);
          return cue.withLengthMs(cue.endMs().subtract(start)).withStartMs(start);
        });
  }

  /** Moves the ends of cues; they keep at least a millisecond. */
  public static Changed stretchEnd(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(scene, refs, cue -> cue.withLengthMs(cue.lengthMs().add(byMs).max(LEAST_MS)));
  }

  /** Changes the fades at the start of cues, each to between none and the whole cue. */
  public static Changed fadeIn(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(scene, refs, cue -> cue.withFadeInMs(within(cue.fadeInMs().add(byMs), cue)));
  }

  /** Changes the fades at the end of cues, each to between none and the whole cue. */
  public static Changed fadeOut(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(scene, refs, cue -> cue.withFadeOutMs(within(cue.fadeOutMs().add(byMs), cue)));
  }

  /**
   * Cuts cues in two at an instant; those that don't cover it are left. The light of the second
   * half goes on as it was wherever its pattern has a phase that can say so.
   */
  public static Changed split(Scene scene, Collection<CueRef> refs, BigDecimal atMs) {
    Scene changed = scene;
    List<CueRef> halves = new ArrayList<>();
    for (CueRef ref : new TreeSet<>(refs)) {
      Optional<Cue> cue = ref.in(scene).filter(c -> covers(c, atMs));
      if (cue.isEmpty()) {
        continue;
      }
      BigDecimal before = atMs.subtract(cue.get().startMs());
      Cue left = cue.get().withLengthMs(before).withFadeOutMs(BigDecimal.ZERO);
      Cue right =
          cue.get()
              .withStartMs(atMs)
              .withLengthMs(cue.get().lengthMs().subtract(before))
              .withFadeInMs(BigDecimal.ZERO)
              .withPattern(PatternPhase.later(cue.get().pattern(), before));
      List<Cue> cues = new ArrayList<>(changed.tracks().get(ref.track()).cues());
      cues.set(ref.cue(), left);
      cues.add(right);
      changed =
          changed.withTracks(
              Projects.replaced(changed.tracks(), ref.track(), t -> t.withCues(cues)));
      halves.add(new CueRef(ref.track(), cues.size() - 1));
    }
    return new Changed(changed, halves);
  }

  /** Copies cues, as they stand. */
  public static List<Copied> copy(Scene scene, Collection<CueRef> refs) {
    return refs.stream()
        .filter(ref -> ref.in(scene).isPresent())
        .sorted(
            Comparator.comparing((CueRef ref) -> ref.in(scene).orElseThrow().startMs())
                .thenComparing(Comparator.naturalOrder()))
        .map(
            ref -> {
              Track track = scene.tracks().get(ref.track());
              return new Copied(track.lamps(), track.span(), track.cues().get(ref.cue()));
            })
        .toList();
  }

  /**
   * Pastes what was copied so that its first cue starts at an instant.
   *
   * @param onto where all come from the same lamps: the lamps that get them instead; empty to keep
   *     their own. Lamps that the scene's rig has not must have been left out
   */
  public static Changed paste(
      Scene scene, List<Copied> copied, BigDecimal atMs, List<String> onto) {
    BigDecimal first =
        copied.stream()
            .map(c -> c.cue().startMs())
            .min(Comparator.naturalOrder())
            .orElse(BigDecimal.ZERO);
    boolean oneSource = copied.stream().map(Copied::lamps).distinct().count() == 1;
    Scene changed = scene;
    List<CueRef> pasted = new ArrayList<>();
    for (Copied one : copied) {
      Cue cue = one.cue().withStartMs(one.cue().startMs().subtract(first).add(atMs));
      List<String> lamps = oneSource && !onto.isEmpty() ? onto : one.lamps();
      Changed step = add(changed, lamps, one.span(), cue);
      changed = step.scene();
      pasted.addAll(step.cues());
    }
    return new Changed(changed, pasted);
  }

  /** Gives cues to other lamps, at the same times. */
  public static Changed toLamps(Scene scene, Collection<CueRef> refs, List<String> lamps) {
    List<Copied> copied = copy(scene, refs);
    Scene changed = remove(scene, refs).scene();
    List<CueRef> moved = new ArrayList<>();
    for (Copied one : copied) {
      Changed step = add(changed, lamps, one.span(), one.cue());
      changed = step.scene();
      moved.addAll(step.cues());
    }
    return new Changed(changed, moved);
  }

  /** Changes each of some cues. */
  public static Changed each(Scene scene, Collection<CueRef> refs, UnaryOperator<Cue> change) {
    TreeMap<Integer, List<Cue>> byTrack = new TreeMap<>();
    for (CueRef ref : refs) {
      if (ref.in(scene).isPresent()) {
        List<Cue> cues =
            byTrack.computeIfAbsent(
                ref.track(), t -> new ArrayList<>(scene.tracks().get(t).cues()));
        cues.set(ref.cue(), change.apply(cues.get(ref.cue())));
      }
    }
    List<Track> tracks = new ArrayList<>(scene.tracks());
    byTrack.forEach((t, cues) -> tracks.set(t, tracks.get(t).withCues(cues)));
    return new Changed(scene.withTracks(tracks), List.copyOf(refs));
  }

  /** The exact time of a frame, or just before it where that has more than three decimals. */
  public static BigDecimal frameMs(Scene scene, long frame) {
    return BigDecimal.valueOf(frame)
        .multiply(BigDecimal.valueOf(1000))
        .divide(scene.framesPerSecond(), 3, RoundingMode.FLOOR);
  }

  /** The frame whose time is nearest to an instant, at least 0. */
  public static long nearestFrame(Scene scene, BigDecimal ms) {
    return ms.max(BigDecimal.ZERO)
        .multiply(scene.framesPerSecond())
        .divide(BigDecimal.valueOf(1000), 0, RoundingMode.HALF_UP)
        .longValueExact();
  }

  private static Optional<Integer> freeTrack(Scene scene, List<String> lamps, Span span, Cue cue) {
    for (int t = 0; t < scene.tracks().size(); t++) {
      Track track = scene.tracks().get(t);
      if (track.lamps().equals(lamps)
          && track.span() == span
          && track.cues().stream().noneMatch(other -> overlap(other, cue))) {
        return Optional.of(t);
      }
    }
    return Optional.empty();
  }

  private static boolean overlap(Cue a, Cue b) {
    return a.startMs().compareTo(b.endMs()) < 0 && b.startMs().compareTo(a.endMs()) < 0;
  }

  private static boolean covers(Cue cue, BigDecimal atMs) {
    return atMs.subtract(cue.startMs()).compareTo(LEAST_MS) >= 0
        && cue.endMs().subtract(atMs).compareTo(LEAST_MS) >= 0;
  }

  private static BigDecimal within(BigDecimal fadeMs, Cue cue) {
    return fadeMs.max(BigDecimal.ZERO).min(cue.lengthMs());
  }
}
