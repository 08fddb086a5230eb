package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/**
 * A hand that holds cues. Every step goes from the scene as it was when the hand took them, so that
 * the way back is the same as the way there.
 */
public final class CueDrag {
  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final Bench bench;
  private final Scene scene;
  private final List<CueRef> cues;
  private final Cue held;
  private final RibbonLayout.Grip grip;
  private final double startMs;
  private final String startLamp;
  private final Object gesture = new Object();

  /**
   * @param hit what the hand took; there is a cue
   * @param atMs where in time
   */
  public CueDrag(RibbonsModel model, RibbonLayout.Hit hit, double atMs) {
    this.model = model;
    this.bench = model.bench();
    this.scene = bench.scene().orElseThrow();
    this.cues = List.copyOf(bench.selection().cues());
    this.held = hit.cue().flatMap(ref -> ref.in(scene)).orElseThrow();
    this.grip = hit.grip();
    this.startMs = atMs;
    this.startLamp = hit.row().lamp().id();
  }

  /**
   * Moves the hand.
   *
   * @param lamp whose row it is over, if it is over one
   * @param free whether edges are drawn to nothing
   */
  public void to(double ms, Optional<String> lamp, boolean free) {
    Snap snap = model.snapping().of(cues, free);
    double reachMs = model.snapping().reachMs();
    BigDecimal byMs =
        switch (grip) {
          case BODY, KEYFRAME -> moved(snap, ms - startMs, reachMs);
          case START -> edge(snap, held.startMs(), ms - startMs, reachMs);
          case END -> edge(snap, held.endMs(), ms - startMs, reachMs);
          case FADE_IN -> edge(snap, held.startMs().add(held.fadeInMs()), ms - startMs, reachMs);
          case FADE_OUT ->
              edge(snap, held.endMs().subtract(held.fadeOutMs()), ms - startMs, reachMs).negate();
        };
    Optional<String> other =
        grip == RibbonLayout.Grip.BODY ? lamp.filter(l -> !l.equals(startLamp)) : Optional.empty();
    bench.applyToCues(
        texts.get("edit." + grip.name()), Optional.of(gesture), now -> changed(byMs, other));
  }

  /** Lets go. */
  public void end() {
    bench.endGesture();
  }

  private CueEdits.Changed changed(BigDecimal byMs, Optional<String> onto) {
    CueEdits.Changed changed =
        switch (grip) {
          case BODY, KEYFRAME -> CueEdits.shift(scene, cues, byMs);
          case START -> CueEdits.stretchStart(scene, cues, byMs);
          case END -> CueEdits.stretchEnd(scene, cues, byMs);
          case FADE_IN -> CueEdits.fadeIn(scene, cues, byMs);
          case FADE_OUT -> CueEdits.fadeOut(scene, cues, byMs);
        };
    return onto.map(lamp -> CueEdits.toLamps(changed.scene(), changed.cues(), List.of(lamp)))
        .orElse(changed);
  }

  // Either edge may be drawn to a mark; the one that is nearer to its mark is.
  private BigDecimal moved(Snap snap, double byMs, double reachMs) {
    BigDecimal byStart = edge(snap, held.startMs(), byMs, reachMs);
    BigDecimal byEnd = edge(snap, held.endMs(), byMs, reachMs);
    double off = Math.abs(byStart.doubleValue() - byMs);
    double offEnd = Math.abs(byEnd.doubleValue() - byMs);
    // An end that falls between frames must not take the start off its frame.
    boolean endOnMark = offEnd < off && offEnd <= reachMs && wholeFrame(byEnd);
    return endOnMark ? byEnd : byStart;
  }

  private boolean wholeFrame(BigDecimal byMs) {
    BigDecimal start = held.startMs().add(byMs);
    return CueEdits.frameMs(scene, CueEdits.nearestFrame(scene, start)).compareTo(start) == 0;
  }

  private static BigDecimal edge(Snap snap, BigDecimal edge, double byMs, double reachMs) {
    return snap.edge(edge.doubleValue() + byMs, reachMs).subtract(edge);
  }
}
