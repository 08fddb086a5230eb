package lampwright.app.workshop.model;

import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.engine.scene.Scene;

/** Which frame of the scene on the bench is shown. For the screen's thread. */
public final class Playhead {
  private final Bench bench;
  private final ReadOnlyIntegerWrapper frame = new ReadOnlyIntegerWrapper();

  private final ObjectProperty<Optional<FrameRange>> range =
      new SimpleObjectProperty<>(Optional.empty());

  public Playhead(Bench bench) {
    this.bench = bench;
    frame.set(bench.state().frame());
    bench.watch(BenchState::frame, (before, now) -> frame.set(now));
    bench.watch(state -> state.selection().scene(), (before, now) -> range.set(Optional.empty()));
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

  /** The range that is played again and again, if there is one: the workshop's, not the scene's. */
  public ObjectProperty<Optional<FrameRange>> rangeProperty() {
    return range;
  }

  /** The range as far as the scene on the bench has it. */
  public Optional<FrameRange> range() {
    int count = bench.scene().map(Scene::frameCount).orElse(0);
    return range
        .get()
        .filter(r -> r.from() < count)
        .map(r -> new FrameRange(r.from(), Math.min(count, r.to())));
  }

  /** Begins the range at the frame shown; it ends with the scene if it would end before. */
  public void beginRange() {
    bench
        .scene()
        .ifPresent(
            scene -> {
              int to =
                  range().map(FrameRange::to).filter(t -> t > frame()).orElse(scene.frameCount());
              range.set(Optional.of(new FrameRange(frame(), to)));
            });
  }

  /** Ends the range after the frame shown; it begins with the scene if it would begin after. */
  public void endRange() {
    int from = range().map(FrameRange::from).filter(f -> f <= frame()).orElse(0);
    range.set(Optional.of(new FrameRange(from, frame() + 1)));
  }
}
