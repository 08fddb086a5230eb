package lampwright.app.workshop.model;

import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;

/** Which frame of the scene on the bench is shown. For the screen's thread. */
public final class Playhead {
  private final Bench bench;
  private final ReadOnlyIntegerWrapper frame = new ReadOnlyIntegerWrapper();

  public Playhead(Bench bench) {
    this.bench = bench;
    frame.set(bench.state().frame());
    bench.watch(BenchState::frame, (before, now) -> frame.set(now));
  }

  /** The frame shown, from 0. */
  public ReadOnlyIntegerProperty frameProperty() {
    return frame.getReadOnlyProperty();
  }

  public int frame() {
    return bench.state().frame();
  }

  /** Goes to a frame, or to the nearest that the scene has. */
  public void go(int wanted) {
    bench.go(wanted);
  }
}
