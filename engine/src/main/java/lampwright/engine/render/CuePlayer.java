package lampwright.engine.render;

import java.util.List;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Painter;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/** One cue made ready: where its light goes and in which frames. */
final class CuePlayer {
  /** Rows of pixels that the pattern sees alike, painted once for all of them. */
  static final class Row {
    private final Painter painter;
    private final PackageRuns packages;
    private boolean seen;

    /**
     * @param painter the pattern on such a row
     * @param packages those of each row
     */
    Row(Painter painter, PackageRuns packages) {
      this.painter = painter;
      this.packages = packages;
    }
  }

  private final int place;
  private final Ratio startMs;
  private final Ratio fadeInMs;
  private final Ratio lengthMs;
  private final Ratio fadeOutMs;
  private final Ratio fadesFromMs;
  private final Blend blend;
  private final Curve curve;
  private final Row[] rows;
  private final double[] scratch;
  private final boolean startsAt0;
  private final double full;
  private final Ratio frameMs;
  private final long firstFrame;
  private final long fullFrom;
  private final long fullUntil;
  private final long endFrame;
  private final Moment sinceStart = new Moment();
  private final Moment untilEnd = new Moment();
  private boolean fading;
  private boolean apart;

  /**
   * A cue made ready.
   *
   * @param place where it is in the list of its track
   * @param scratch room for the drives of its longest row
   */
  CuePlayer(int place, Cue cue, FrameClock clock, Curve curve, List<Row> rows, double[] scratch) {
    this.place = place;
    this.startMs = Ratio.of(cue.startMs());
    this.lengthMs = Ratio.of(cue.lengthMs());
    this.fadeInMs = Ratio.of(cue.fadeInMs());
    this.fadeOutMs = Ratio.of(cue.fadeOutMs());
    this.fadesFromMs = lengthMs.minus(fadeOutMs);
    this.blend = cue.blend();
    this.curve = curve;
    this.frameMs = clock.frame();
    this.scratch = scratch;
    this.startsAt0 = startMs.signum() == 0;
    this.rows = rows.toArray(Row[]::new);
    this.full = curve.light(1);
    this.firstFrame = clock.firstAtOrAfter(startMs);
    this.fullFrom = clock.firstAtOrAfter(startMs.plus(fadeInMs));
    this.fullUntil = clock.firstAfter(startMs.plus(fadesFromMs));
    this.endFrame = clock.firstAtOrAfter(Ratio.of(cue.endMs()));
  }

  /** Where it is in the list of its track. */
  int place() {
    return place;
  }

  /** The first frame that the cue covers. */
  long firstFrame() {
    return firstFrame;
  }

  /** The first frame that it no longer covers. */
  long endFrame() {
    return endFrame;
  }

  /** The first frame after this one at which it begins or ends to fade, or ends. */
  long nextChange(long frame) {
    // A long fade in may last into the fade out, or past the end.
    long change = endFrame;
    if (frame < fullFrom) {
      change = Math.min(change, fullFrom);
    }
    return frame < fullUntil ? Math.min(change, fullUntil) : change;
  }

  /**
   * Learns what is hidden from it, and marks what it hides, until its next change.
   *
   * @param hidden the packages that cues above it hide
   */
  void arrange(long frame, boolean[] hidden) {
    fading = frame < fullFrom || frame >= fullUntil;
    boolean opaque = blend == Blend.COVER && !fading && full == 1;
    for (Row row : rows) {
      row.seen = !row.packages.allIn(hidden);
      if (opaque) {
        row.packages.mark(hidden);
      }
    }
  }

  /** Marks the packages on which its light is seen, and again those that others had marked. */
  void markSeen(boolean[] once, boolean[] twice) {
    for (Row row : rows) {
      if (row.seen) {
        row.packages.markTwice(once, twice);
      }
    }
  }

  /**
   * Learns whether it has its packages for itself, until its next change: then their drives are its
   * own from frame to frame.
   *
   * @param shared the packages that it would not have for itself
   */
  void setApart(boolean[] shared) {
    apart = true;
    for (Row row : rows) {
      apart &= !row.seen || !row.packages.anyIn(shared);
    }
  }

  /** Whether it has its packages for itself. */
  boolean isApart() {
    return apart;
  }

  /**
   * Lays what is seen of the cue's light over the light so far; on dark where it is apart.
   *
   * @return the first frame in which it has to be played again: this very one, or a later one if it
   *     is apart and what it has laid stays the same
   */
  long play(long frame, Moment timeMs, Light light, RenderWatcher watcher) {
    Moment tMs = timeMs;
    if (!startsAt0) {
      sinceStart.setDifference(timeMs, startMs);
      tMs = sinceStart;
    }
    double faded = fading ? fade(tMs) : 1;
    double a = fading ? curve.light(faded) : full;
    if (apart) {
      darken(light);
    }
    watcher.begins(this, tMs, faded, a, light);
    long same = apart && !fading ? Long.MAX_VALUE : 0;
    for (Row row : rows) {
      if (row.seen) {
        if (light.isExact()) {
          row.painter.paint(tMs, scratch);
        } else {
          double error = row.painter.paintNearly(tMs, scratch);
          if (error > 0) {
            row.packages.addError(error, light);
            same = 0;
          }
        }
        watcher.paints(row.packages, scratch);
        row.packages.lay(blend, scratch, a, light.drives());
        if (same > 1) {
          same = Math.min(same, row.painter.sameFor(tMs, frameMs));
        }
      }
    }
    watcher.ends(light);
    // Where nothing is seen there is nothing to lay until cues are arranged anew.
    return same == Long.MAX_VALUE ? same : same > 1 ? frame + same : frame;
  }

  private void darken(Light light) {
    for (Row row : rows) {
      if (row.seen) {
        row.packages.darken(light);
      }
    }
  }

  private double fade(Moment tMs) {
    double v = 1;
    if (fadeInMs.signum() > 0 && tMs.compareTo(fadeInMs) < 0) {
      v = tMs.over(fadeInMs);
    }
    if (fadeOutMs.signum() > 0 && tMs.compareTo(fadesFromMs) > 0) {
      untilEnd.setDifference(lengthMs, tMs);
      v = Math.min(v, untilEnd.over(fadeOutMs));
    }
    return v;
  }
}
