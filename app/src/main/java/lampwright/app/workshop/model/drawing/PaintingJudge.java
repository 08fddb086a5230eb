package lampwright.app.workshop.model.drawing;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.engine.meter.FlashCaution;
import org.jspecify.annotations.Nullable;

/**
 * Judges in the background how often what the drawing paints flashes on the screen. Its property
 * changes on the screen's thread alone, from which alone it is called.
 */
public final class PaintingJudge implements AutoCloseable {
  private final Executor screen;
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "painting-judge");
            thread.setDaemon(true);
            return thread;
          });
  private final ReadOnlyObjectWrapper<Optional<FlashCaution>> caution =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Painting> current = Optional.empty();
  private @Nullable Future<?> work;

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public PaintingJudge(Executor screen) {
    this.screen = screen;
  }

  /** The caution of what is painted now; none while it is not known. */
  public ReadOnlyObjectProperty<Optional<FlashCaution>> cautionProperty() {
    return caution.getReadOnlyProperty();
  }

  /** This is painted now. To be told again as more of the scene is rendered. */
  public void painted(Painting painting) {
    if (!current.equals(Optional.of(painting))) {
      current = Optional.of(painting);
      if (work != null) {
        work.cancel(true);
        work = null;
      }
      caution.set(Optional.empty());
    }
    if (work == null && painting.light().complete()) {
      work = worker.submit(() -> judge(painting));
    }
  }

  private void judge(Painting painting) {
    try {
      FlashCaution found = painting.flashes();
      screen.execute(
          () -> {
            if (current.equals(Optional.of(painting))) {
              caution.set(Optional.of(found));
            }
          });
    } catch (CancellationException overtaken) {
      // Something else is painted by now.
    }
  }

  /** Ends its thread. */
  @Override
  public void close() {
    worker.shutdownNow();
  }
}
