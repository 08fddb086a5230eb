package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CuePhases;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;

/** A hand that holds the light of cues: it moves within them, by their phases. */
public final class PhaseDrag {
  private final Texts texts = Texts.of("ribbons");
  private final Bench bench;
  private final List<CueRef> cues;
  private final CuePhases phases;
  private final Object gesture;

  /** Takes the selected cues; there is a scene. */
  public PhaseDrag(Bench bench) {
    this(bench, new Object());
  }

  /**
   * The same.
   *
   * @param gesture what is done within the same one is undone at once
   */
  PhaseDrag(Bench bench, Object gesture) {
    this.bench = bench;
    this.gesture = gesture;
    this.cues = List.copyOf(bench.selection().cues());
    this.phases = new CuePhases(bench.project().rig(), bench.scene().orElseThrow(), cues);
  }

  /** Moves the light to later by a time, from where it was when it was taken. */
  public void to(double laterMs) {
    bench.applyToCues(
        texts.get("edit.phase"),
        Optional.of(gesture),
        now -> new CueEdits.Changed(phases.later(laterMs), cues));
  }

  /** Lets go. */
  public void end() {
    bench.endGesture();
  }
}
