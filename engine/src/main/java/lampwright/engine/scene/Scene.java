package lampwright.engine.scene;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Set;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
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
 */
public record Scene(
    String id,
    BigDecimal lengthMs,
    BigDecimal framesPerSecond,
    boolean loop,
    Dither dither,
    List<Track> tracks) {
  public static final int MAX_FRAMES = 1_000_000;
  public static final ListLimit TRACKS = new ListLimit(0, 4096, "tracks");
  public static final boolean DEFAULT_LOOP = true;
  public static final BigDecimal DEFAULT_FRAMES_PER_SECOND = BigDecimal.valueOf(50);

  private static final BigDecimal SECOND_MS = BigDecimal.valueOf(1000);
  private static final Set<String> TIMES = Set.of("lengthMs", "framesPerSecond");

  public Scene {
    lengthMs = canonical(lengthMs);
    framesPerSecond = canonical(framesPerSecond);
    tracks = List.copyOf(tracks);
    Checks checks =
        Checks.of("scene")
            .id("id", id)
            .range("lengthMs", lengthMs, 1, Times.MAX_MS)
            .range("framesPerSecond", framesPerSecond, 1, 1000)
            .size("tracks", tracks, TRACKS);
    // Past a wrong length or rate the number of frames says nothing.
    if (checks.faults().stream().noneMatch(f -> TIMES.contains(f.field()))
        && exactFrames(lengthMs, framesPerSecond).compareTo(BigDecimal.valueOf(MAX_FRAMES)) > 0) {
      checks.add(
          "lengthMs",
          lengthMs.toPlainString() + " at " + framesPerSecond.toPlainString() + " frames/s",
          "needs at most " + MAX_FRAMES + " frames");
    }
    checks.done();
  }

  public Scene withId(String newId) {
    return new Scene(newId, lengthMs, framesPerSecond, loop, dither, tracks);
  }

  public Scene withLengthMs(BigDecimal newLengthMs) {
    return new Scene(id, newLengthMs, framesPerSecond, loop, dither, tracks);
  }

  public Scene withFramesPerSecond(BigDecimal newFramesPerSecond) {
    return new Scene(id, lengthMs, newFramesPerSecond, loop, dither, tracks);
  }

  public Scene withLoop(boolean newLoop) {
    return new Scene(id, lengthMs, framesPerSecond, newLoop, dither, tracks);
  }

  public Scene withDither(Dither newDither) {
    return new Scene(id, lengthMs, framesPerSecond, loop, newDither, tracks);
  }

  public Scene withTracks(List<Track> newTracks) {
    return new Scene(id, lengthMs, framesPerSecond, loop, dither, newTracks);
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
