package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/** What is done to cues: every method gives the changed scene and where the cues are then. */
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

  /** Why a cue is not split. */
  public enum Whole {
    /** The instant lies in a fade of the cue. */
    FADE,
    /** The pattern can't begin in its middle. */
    PATTERN,
    /** Another cue of the track lies over the second half, which would come to lie over that. */
    ORDER
  }

  /**
   * A scene after cues were split.
   *
   * @param changed with the second halves
   * @param whole why some of the cues stay whole; empty if none does
   */
  public record Split(Changed changed, Set<Whole> whole) {
    public Split {
      whole = Set.copyOf(whole);
    }
  }

  /**
   * A cue of a track in which cues are being split.
   *
   * @param of index of the cue that it is, or is a half of
   */
  private record Piece(Cue cue, int of, boolean secondHalf) {}

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
    tracks.set(at, Track.CUES.with(tracks.get(at), cues));
    return new Changed(Scene.TRACKS.with(scene, tracks), List.of(new CueRef(at, cues.size() - 1)));
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
        tracks.add(Track.CUES.with(track, kept));
      }
    }
    return new Changed(Scene.TRACKS.with(scene, tracks), List.of());
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
    return each(scene, refs, cue -> Cue.START_MS.with(cue, cue.startMs().add(by)));
  }

  /** Moves the starts of cues and leaves their ends; they keep at least a millisecond. */
  public static Changed stretchStart(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(
        scene,
        refs,
        cue -> {
          BigDecimal latest = cue.endMs().subtract(LEAST_MS);
          BigDecimal start = cue.startMs().add(byMs).max(BigDecimal.ZERO).min(latest);
          return Cue.START_MS.with(Cue.LENGTH_MS.with(cue, cue.endMs().subtract(start)), start);
        });
  }

  /** Moves the ends of cues; they keep at least a millisecond. */
  public static Changed stretchEnd(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(
        scene, refs, cue -> Cue.LENGTH_MS.with(cue, cue.lengthMs().add(byMs).max(LEAST_MS)));
  }

  /** Changes the fades at the start of cues, each to between none and the whole cue. */
  public static Changed fadeIn(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(
        scene, refs, cue -> Cue.FADE_IN_MS.with(cue, within(cue.fadeInMs().add(byMs), cue)));
  }

  /** Changes the fades at the end of cues, each to between none and the whole cue. */
  public static Changed fadeOut(Scene scene, Collection<CueRef> refs, BigDecimal byMs) {
    return each(
        scene, refs, cue -> Cue.FADE_OUT_MS.with(cue, within(cue.fadeOutMs().add(byMs), cue)));
  }

  /**
   * Cuts cues in two at an instant; those that don't cover it are left. No byte of any frame
   * changes by it: a cue whose light can't go on from there unchanged stays whole.
   */
  public static Split split(Rig rig, Scene scene, Collection<CueRef> refs, BigDecimal atMs) {
    Scene changed = scene;
    List<CueRef> halves = new ArrayList<>();
    Set<Whole> whole = new TreeSet<>();
    TreeMap<Integer, List<CueRef>> byTrack = new TreeMap<>();
    for (CueRef ref : new TreeSet<>(refs)) {
      if (ref.in(scene).filter(cue -> covers(cue, atMs)).isPresent()) {
        byTrack.computeIfAbsent(ref.track(), t -> new ArrayList<>()).add(ref);
      }
    }
    for (int t : byTrack.keySet()) {
      Track track = scene.tracks().get(t);
      List<Piece> pieces = new ArrayList<>();
      for (int c = 0; c < track.cues().size(); c++) {
        pieces.add(new Piece(track.cues().get(c), c, false));
      }
      // The last to be laid first, so that second halves lie over each other as the cues did.
      byTrack.get(t).stream()
          .sorted(
              Comparator.comparing((CueRef ref) -> ref.in(scene).orElseThrow().startMs())
                  .thenComparing(CueRef::cue)
                  .reversed())
          .forEach(ref -> split(rig, scene, ref, atMs, pieces).ifPresent(whole::add));
      Track after = Track.CUES.with(track, pieces.stream().map(Piece::cue).toList());
      changed = Scene.TRACKS.with(changed, Projects.replaced(changed.tracks(), t, same -> after));
      for (int c = 0; c < pieces.size(); c++) {
        if (pieces.get(c).secondHalf()) {
          halves.add(new CueRef(t, c));
        }
      }
    }
    return new Split(new Changed(changed, halves), whole);
  }

  /** Splits one cue of a track if that changes no light; says why if not. */
  private static Optional<Whole> split(
      Rig rig, Scene scene, CueRef ref, BigDecimal atMs, List<Piece> pieces) {
    Track track = scene.tracks().get(ref.track());
    Cue cue = track.cues().get(ref.cue());
    int at = pieces.indexOf(new Piece(cue, ref.cue(), false));
    int place = pieces.size();
    for (int i = pieces.size() - 1; i >= 0; i--) {
      Cue other = pieces.get(i).cue();
      int starts = other.startMs().compareTo(atMs);
      place = starts == 0 ? i : place;
      int later = other.startMs().compareTo(cue.startMs());
      boolean over = later > 0 || (later == 0 && i > at);
      if (over && starts < 0 && other.endMs().compareTo(atMs) > 0) {
        return Optional.of(Whole.ORDER);
      }
    }
    CueSplit.Outcome outcome = CueSplit.of(rig, scene, track, cue, atMs);
    if (outcome instanceof CueSplit.Halves halves) {
      pieces.set(at, new Piece(halves.left(), ref.cue(), false));
      pieces.add(place, new Piece(halves.right(), ref.cue(), true));
      return Optional.empty();
    }
    return Optional.of(((CueSplit.Stays) outcome).why());
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
      Cue cue = Cue.START_MS.with(one.cue(), one.cue().startMs().subtract(first).add(atMs));
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
    byTrack.forEach((t, cues) -> tracks.set(t, Track.CUES.with(tracks.get(t), cues)));
    return new Changed(Scene.TRACKS.with(scene, tracks), List.copyOf(refs));
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
