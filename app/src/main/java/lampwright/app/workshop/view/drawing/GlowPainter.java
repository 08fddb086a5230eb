package lampwright.app.workshop.view.drawing;

import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;
import lampwright.app.workshop.model.drawing.Glow;
import lampwright.engine.work.LatestWorker;

/** Paints the glow in the background: always the newest frame, none in vain. */
final class GlowPainter {
  private final LatestWorker worker;
  private final Consumer<int[]> shown;

  /**
   * @param screen runs what it is given on the screen's thread
   * @param shown takes a copy of the painted colours, there
   */
  GlowPainter(Executor screen, Consumer<int[]> shown) {
    this.worker = LatestWorker.named("glow-painter", screen, LatestWorker.Ending.INTERRUPT);
    this.shown = shown;
  }

  /**
   * Requests one frame's light.
   *
   * @param paint paints it, and gives the glow that has it now
   */
  void request(Supplier<Glow> paint) {
    worker.requestNext(
        turn -> {
          int[] copy = paint.get().argb().clone();
          turn.show(() -> shown.accept(copy));
        });
  }

  void close() {
    worker.close();
  }
}
