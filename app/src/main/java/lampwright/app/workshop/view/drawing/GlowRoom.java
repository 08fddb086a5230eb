package lampwright.app.workshop.view.drawing;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import javafx.application.Platform;
import lampwright.app.workshop.model.drawing.Glow;

/** Paints the glow in the background: always the newest frame, none in vain. */
final class GlowRoom {
  /** Where one frame's light is painted. */
  @FunctionalInterface
  interface Wish {
    /** Paints it, and gives the glow that has it now. */
    Glow paint();
  }

  private final ExecutorService painter =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "glow-room");
            thread.setDaemon(true);
            return thread;
          });
  private final AtomicReference<Wish> next = new AtomicReference<>();
  private final Consumer<int[]> shown;

  /**
   * @param shown takes a copy of the painted colours, on the screen's thread
   */
  GlowRoom(Consumer<int[]> shown) {
    this.shown = shown;
  }

  void want(Wish wish) {
    if (next.getAndSet(wish) == null) {
      painter.execute(this::paint);
    }
  }

  void close() {
    painter.shutdownNow();
  }

  private void paint() {
    Wish wish = next.getAndSet(null);
    if (wish != null) {
      int[] copy = wish.paint().argb().clone();
      Platform.runLater(() -> shown.accept(copy));
    }
  }
}
