package lampwright.app.workshop.view.drawing;

import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;
import lampwright.app.picture.Glow;
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
   * @param meter is given the brightest of its dots, on the screen's thread
   */
  void request(Supplier<Glow> paint, Consumer<Float> meter) {
    worker.requestNext(
        turn -> {
          Glow painted = paint.get();
          int[] copy = painted.argb().clone();
          float brightest = painted.brightest();
          turn.show(
              () -> {
                shown.accept(copy);
                meter.accept(brightest);
              });
        });
  }

  void close() {
    worker.close();
  }
}
