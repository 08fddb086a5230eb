package lampwright.app.workshop.model.drawing;

import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.work.LatestWorker;

/**
 * Judges in the background how often what the drawing paints flashes on the screen. Its property
 * changes on the screen's thread alone, from which alone it is called.
 */
public final class PaintingJudge implements AutoCloseable {
  private final LatestWorker worker;
  private final ReadOnlyObjectWrapper<Optional<FlashCaution>> caution =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Painting> current = Optional.empty();
  private boolean requested;

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public PaintingJudge(Executor screen) {
    worker = LatestWorker.named("painting-judge", screen, LatestWorker.Ending.INTERRUPT);
  }

  /** The caution of what is painted now; none while it is not known. */
  public ReadOnlyObjectProperty<Optional<FlashCaution>> cautionProperty() {
    return caution.getReadOnlyProperty();
  }

  /** This is painted now. To be told again as more of the scene is rendered. */
  public void painted(Painting painting) {
    if (!current.equals(Optional.of(painting))) {
      current = Optional.of(painting);
      requested = false;
      worker.cancel();
      caution.set(Optional.empty());
    }
    if (!requested && painting.light().frames().complete()) {
      requested = true;
      worker.request(turn -> judge(painting, turn));
    }
  }

  private void judge(Painting painting, LatestWorker.Turn turn) {
    FlashCaution found = painting.flashes();
    turn.show(() -> caution.set(Optional.of(found)));
  }

  /** Ends its thread. */
  @Override
  public void close() {
    worker.close();
  }
}
