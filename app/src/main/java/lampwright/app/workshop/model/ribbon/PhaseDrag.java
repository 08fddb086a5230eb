package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.time.Ratio;

/** A hand that holds the light of cues: it moves within them, by their phases. */
public final class PhaseDrag {
  private static final int DECIMALS = 6;

  private final Texts texts = Texts.of("ribbons");
  private final Bench bench;
  private final Scene scene;
  private final List<CueRef> cues;
  private final Object gesture = new Object();

  /** Takes the selected cues; there is a scene. */
  public PhaseDrag(Bench bench) {
    this.bench = bench;
    this.scene = bench.scene().orElseThrow();
    this.cues = List.copyOf(bench.selection().cues());
  }

  /** Whether the light of a cue can be moved within it. */
  public static boolean moves(Cue cue) {
    return cue.pattern().period().isPresent() && cue.pattern().startPhase().isPresent();
  }

  /** Moves the light to later by a time, from where it was when it was taken. */
  public void to(double laterMs) {
    bench.applyToCues(
        texts.get("edit.phase"),
        Optional.of(gesture),
        now -> CueEdits.each(scene, cues, cue -> shifted(cue, laterMs)));
  }

  /** Lets go. */
  public void end() {
    bench.endGesture();
  }

  /** A cue with its light later by a time; itself if that can't be. */
  static Cue shifted(Cue cue, double laterMs) {
    if (!moves(cue)) {
      return cue;
    }
    Pattern pattern = cue.pattern();
    double periodMs = pattern.period().map(Ratio::doubleValue).orElseThrow();
    BigDecimal turns =
        BigDecimal.valueOf(laterMs / periodMs).setScale(DECIMALS, RoundingMode.HALF_UP);
    BigDecimal phase = pattern.startPhase().orElseThrow().subtract(turns);
    BigDecimal whole = phase.setScale(0, RoundingMode.FLOOR);
    return Cue.PATTERN.with(cue, pattern.withPhase(phase.subtract(whole)));
  }
}
