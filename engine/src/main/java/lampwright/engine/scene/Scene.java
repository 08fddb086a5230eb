package lampwright.engine.scene;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.IdType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.pattern.Times;

/**
 * A named timeline that loops or plays once.
 *
 * @param id unique among the scenes
 * @param lengthMs 1 ms to a day, and at most 1,000,000 frames
 * @param framesPerSecond 1 to 1,000
 * @param loop whether it begins again
 * @param dither what becomes of the part of a drive that a byte cannot hold
 * @param tracks in order from the lowest to the topmost
 * @param markers times that have a name, in any order
 * @param guideSound what the workshop plays beside it; it changes nothing of the light
 */
public record Scene(
    String id,
    BigDecimal lengthMs,
    BigDecimal framesPerSecond,
    boolean loop,
    Dither dither,
    List<Track> tracks,
    List<Marker> markers,
    Optional<GuideSound> guideSound) {
  public static final int MAX_FRAMES = 1_000_000;
  private static final BigDecimal SECOND_MS = BigDecimal.valueOf(1000);
  private static final Set<String> TIMES = Set.of("lengthMs", "framesPerSecond");

  public static final Field<Scene, String> ID = Field.required("id", new IdType(), Scene::id, "");
  public static final Field<Scene, BigDecimal> LENGTH_MS =
      Field.required(
          "lengthMs",
          new DecimalType(Unit.MILLISECONDS, 1, Times.MAX_MS),
          Scene::lengthMs,
          BigDecimal.ONE);
  public static final Field<Scene, BigDecimal> FRAMES_PER_SECOND =
      Field.usual(
              "framesPerSecond",
              new DecimalType(Unit.FRAMES_PER_SECOND, 1, 1000),
              Scene::framesPerSecond,
              BigDecimal.valueOf(50))
          .alwaysWritten();
  public static final Field<Scene, Boolean> LOOP =
      Field.usual("loop", new FlagType(), Scene::loop, true).alwaysWritten();
  public static final Field<Scene, Dither> DITHER =
      Field.usual(
          "dither", ChoiceType.of("dither", Dither.class, Dither::key), Scene::dither, Dither.OFF);
  public static final Field<Scene, List<Track>> TRACKS =
      Field.list(
          "tracks",
          new ListType<>(RecordType.of(Track.SHAPE), new ListLimit(0, 4096, "tracks")),
          Scene::tracks);

  public static final Field<Scene, List<Marker>> MARKERS =
      Field.list(
          "markers",
          new ListType<>(RecordType.of(Marker.SHAPE), new ListLimit(0, 1000, "markers")),
          Scene::markers);

  public static final Field<Scene, Optional<GuideSound>> GUIDE_SOUND =
      Field.optional(
          "guideSound", OptionalType.of(RecordType.of(GuideSound.SHAPE)), Scene::guideSound);

  public static final Shape<Scene> SHAPE =
      Shape.of(
          "scene",
          Scene.class,
          ID,
          LENGTH_MS,
          FRAMES_PER_SECOND,
          LOOP,
          DITHER,
          TRACKS,
          MARKERS,
          GUIDE_SOUND);

  public Scene {
    lengthMs = canonical(lengthMs);
    framesPerSecond = canonical(framesPerSecond);
    tracks = List.copyOf(tracks);
    markers = List.copyOf(markers);
    Checks checks =
        SHAPE.check(id, lengthMs, framesPerSecond, loop, dither, tracks, markers, guideSound);
    // Past a wrong length or rate the number of frames says nothing.
    if (checks.faults().stream().noneMatch(f -> TIMES.contains(f.field()))
        && exactFrames(lengthMs, framesPerSecond).compareTo(BigDecimal.valueOf(MAX_FRAMES)) > 0) {
      checks.add(
          "lengthMs",
          lengthMs.toPlainString() + " at " + framesPerSecond.toPlainString() + " frames/s",
          "must be at most " + MAX_FRAMES + " frames");
    }
    checks.done();
  }

  /** A scene without markers and guide sound. */
  public Scene(
      String id,
      BigDecimal lengthMs,
      BigDecimal framesPerSecond,
      boolean loop,
      Dither dither,
      List<Track> tracks) {
    this(id, lengthMs, framesPerSecond, loop, dither, tracks, List.of(), Optional.empty());
  }

  /** How many frames it has: its length in frames, rounded half up, at least 1. */
  public int frameCount() {
    return Math.max(
        1,
        exactFrames(lengthMs, framesPerSecond).setScale(0, RoundingMode.HALF_UP).intValueExact());
  }

  /** Whether its length is a whole number of frames. */
  public boolean wholeFrames() {
    return exactFrames(lengthMs, framesPerSecond).stripTrailingZeros().scale() <= 0;
  }

  // Dividing by 1000 only shifts the decimal point, so this is exact.
  private static BigDecimal exactFrames(BigDecimal lengthMs, BigDecimal framesPerSecond) {
    return lengthMs.multiply(framesPerSecond).divide(SECOND_MS);
  }
}
