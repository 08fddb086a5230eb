package lampwright.app.workshop.model;

import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import lampwright.engine.scene.Scene;

/** Which frame of the scene on the bench is shown. For the screen's thread. */
public final class Playhead {
  private final Bench bench;
  private final ReadOnlyIntegerWrapper frame = new ReadOnlyIntegerWrapper();

  public Playhead(Bench bench) {
    this.bench = bench;
    bench.projectProperty().addListener((of, before, now) -> go(frame.get()));
    bench
        .selectionProperty()
        .addListener(
            (of, before, now) -> {
              if (!before.scene().equals(now.scene())) {
                go(0);
              }
            });
  }

  /** The frame shown, from 0. */
  public ReadOnlyIntegerProperty frameProperty() {
    return frame.getReadOnlyProperty();
  }

  public int frame() {
    return frame.get();
  }

  /** Goes to a frame, or to the nearest that the scene has. */
  public void go(int wanted) {
    int last = bench.scene().map(Scene::frameCount).orElse(1) - 1;
    frame.set(Math.max(0, Math.min(wanted, last)));
  }
}
