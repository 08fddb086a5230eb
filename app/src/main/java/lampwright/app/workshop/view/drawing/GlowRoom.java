package lampwright.app.workshop.view.drawing;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import javafx.application.Platform;
import lampwright.app.workshop.model.ScreenLight;
import lampwright.app.workshop.model.drawing.Dots;
import lampwright.app.workshop.model.drawing.Glow;

/** Paints the glow in the background: always the newest frame, none in vain. */
final class GlowRoom {
  /** What is to be painted. */
  record Wish(
      Glow glow,
      ScreenLight screen,
      byte[] frame,
      List<Dots.Dot> dots,
      float exposure,
      float most) {}

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
      wish.glow().paint(wish.screen(), wish.frame(), wish.dots(), wish.exposure(), wish.most());
      int[] copy = wish.glow().argb().clone();
      Platform.runLater(() -> shown.accept(copy));
    }
  }
}
