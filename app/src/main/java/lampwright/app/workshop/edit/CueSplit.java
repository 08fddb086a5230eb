package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.check.Checks;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.PaintContext;
import lampwright.engine.pattern.Painter;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.render.TrackRows;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Ratio;

/**
 * Cuts a cue in two so that no byte of any frame changes. Where the second half starts is a share
 * of the pattern's period that may have no end as a decimal, such as a third. It is rounded up
 * then: light that changes at an instant has its new value from that instant on, so a little later
 * is the same light, and a little earlier is not. How little is enough is not estimated: both
 * halves are painted at every frame and compared with the whole.
 */
final class CueSplit {
  /** Decimal places of a phase, tried from the first on. */
  private static final int[] PLACES = {15, 20, 30, Checks.MAX_DECIMALS};

  private static final int MOST_PLACES = Checks.MAX_DECIMALS;

  /** Drives below this are dark: 255 of them, a million frames long, are no part of a byte. */
  private static final double DARK = 1e-30;

  private final Scene scene;
  private final Ratio frameMs;
  private final Cue cue;
  private final BigDecimal atMs;
  private final Set<List<Mixer>> rows;
  private final Curve curve;

  /** Two halves, or why there are none. */
  sealed interface Outcome {}

  record Halves(Cue left, Cue right) implements Outcome {}

  record Stays(CueEdits.Whole why) implements Outcome {}

  private CueSplit(Rig rig, Scene scene, Track track, Cue cue, BigDecimal atMs) {
    this.scene = scene;
    this.cue = cue;
    this.atMs = atMs;
    frameMs = Ratio.of(1000).over(Ratio.of(scene.framesPerSecond())).reduced();
    rows = TrackRows.of(rig, track);
    curve = rig.curve();
  }

  /**
   * Splits a cue.
   *
   * @param atMs within the cue
   */
  static Outcome of(Rig rig, Scene scene, Track track, Cue cue, BigDecimal atMs) {
    return new CueSplit(rig, scene, track, cue, atMs).split();
  }

  private Outcome split() {
    if (fades()) {
      return new Stays(CueEdits.Whole.FADE);
    }
    BigDecimal before = atMs.subtract(cue.startMs());
    Cue left = Cue.FADE_OUT_MS.with(Cue.LENGTH_MS.with(cue, before), BigDecimal.ZERO);
    if (!shinesAsTheWhole(left)) {
      return new Stays(CueEdits.Whole.PATTERN);
    }
    Cue right =
        Cue.FADE_IN_MS.with(
            Cue.LENGTH_MS.with(Cue.START_MS.with(cue, atMs), cue.lengthMs().subtract(before)),
            BigDecimal.ZERO);
    for (Pattern pattern : later(before)) {
      if (shinesAsTheWhole(Cue.PATTERN.with(right, pattern))) {
        return new Halves(left, Cue.PATTERN.with(right, pattern));
      }
    }
    return new Stays(CueEdits.Whole.PATTERN);
  }

  /** Whether a frame before the instant is already fading out, or one after it still fading in. */
  private boolean fades() {
    Ratio last = frameMs.times(firstFrame(atMs) - 1);
    Ratio first = frameMs.times(firstFrame(atMs));
    boolean out =
        cue.fadeOutMs().signum() > 0
            && last.compareTo(Ratio.of(cue.startMs())) >= 0
            && Ratio.of(cue.endMs()).minus(last).compareTo(Ratio.of(cue.fadeOutMs())) < 0;
    boolean in =
        cue.fadeInMs().signum() > 0
            && first.compareTo(Ratio.of(cue.endMs())) < 0
            && first.minus(Ratio.of(cue.startMs())).compareTo(Ratio.of(cue.fadeInMs())) < 0;
    return in || out;
  }

  private long firstFrame(BigDecimal ms) {
    return Ratio.of(ms).over(frameMs).ceiling();
  }

  /** Patterns that may go on as this one does after some time, the simplest first. */
  private Set<Pattern> later(BigDecimal byMs) {
    Set<Pattern> later = new LinkedHashSet<>();
    Optional<Ratio> period = cue.pattern().period(rows.iterator().next());
    if (period.isPresent()) {
      BigDecimal now = cue.pattern().startPhase().orElseThrow();
      Ratio phase = Ratio.of(now).plus(Ratio.of(byMs).over(period.get())).modulo(Ratio.ONE);
      BigDecimal exact = phase.decimal(MOST_PLACES, RoundingMode.CEILING);
      if (Ratio.of(exact).equals(phase)) {
        later.add(cue.pattern().withPhase(exact));
      }
      for (int places : PLACES) {
        BigDecimal up = phase.decimal(places, RoundingMode.CEILING);
        later.add(cue.pattern().withPhase(up));
      }
      return later;
    }
    if (cue.pattern() instanceof Keyframes once) {
      later.add(without(once, byMs));
    }
    later.add(cue.pattern());
    return later;
  }

  /** Keyframes that are still to come, and the last one before them from the start on. */
  private static Keyframes without(Keyframes once, BigDecimal byMs) {
    List<Keyframe> left = new ArrayList<>();
    for (Keyframe frame : once.frames()) {
      boolean passed = frame.atMs().compareTo(byMs) <= 0;
      if (passed) {
        left.clear();
      }
      BigDecimal atMs = passed ? BigDecimal.ZERO : frame.atMs().subtract(byMs);
      left.add(new Keyframe(atMs, frame.colour(), frame.level(), frame.easing()));
    }
    return new Keyframes(once.look(), once.phase(), left, false);
  }

  /** Whether a part of the cue paints what the whole does at each frame that it covers. */
  private boolean shinesAsTheWhole(Cue part) {
    return rows.stream().allMatch(row -> shinesAsTheWhole(part, row));
  }

  private boolean shinesAsTheWhole(Cue part, List<Mixer> row) {
    Painter whole = painter(cue, row);
    Painter own = painter(part, row);
    double[] want = new double[row.size() * Mixer.SLOTS];
    double[] got = new double[want.length];
    Optional<Ratio> period = cue.pattern().period(row);
    long first = firstFrame(part.startMs());
    long end = Math.min(scene.frameCount(), firstFrame(part.endMs()));
    for (long frame = first; frame < end; frame++) {
      Ratio timeMs = frameMs.times(frame);
      if (period.isPresent()
          && frame > first
          && frameMs.times(frame - first).modulo(period.get()).signum() == 0) {
        // From here on each frame is one that was compared, a number of whole periods later.
        return true;
      }
      whole.paint(timeMs.minus(Ratio.of(cue.startMs())), want);
      own.paint(timeMs.minus(Ratio.of(part.startMs())), got);
      for (int i = 0; i < want.length; i++) {
        if (want[i] != got[i] && !(want[i] < DARK && got[i] < DARK)) {
          return false;
        }
      }
    }
    return true;
  }

  private Painter painter(Cue of, List<Mixer> row) {
    return of.pattern().painter(new PaintContext(row, curve, Ratio.of(of.lengthMs())));
  }
}
