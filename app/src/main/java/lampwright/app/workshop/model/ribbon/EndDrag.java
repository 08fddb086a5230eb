package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.scene.Scene;

/** A hand that holds the end of the scene. */
public final class EndDrag {
  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final Bench bench;
  private final Scene scene;
  private final Object gesture = new Object();

  public EndDrag(RibbonsModel model) {
    this.model = model;
    this.bench = model.bench();
    this.scene = bench.scene().orElseThrow();
  }

  /** Moves the end to about this time, by whole frames unless {@code free}. */
  public void to(double ms, boolean free) {
    BigDecimal wanted = model.snapping().edge(ms, free);
    BigDecimal length =
        free ? wanted : CueEdits.frameMs(scene, Math.max(1, CueEdits.nearestFrame(scene, wanted)));
    bench.applyToScene(
        texts.get("edit.sceneLength"),
        Optional.of(gesture),
        now -> Scene.LENGTH_MS.with(now, length.max(BigDecimal.ONE)));
  }

  /** Lets go. */
  public void end() {
    bench.endGesture();
  }
}
