package lampwright.engine.render;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Function;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.work.LatestWorker;

/**
 * Renders a scene in the background. Another request in the middle ends what is in hand, and nobody
 * hears of its frames any more.
 *
 * @param <L> what is made of a scene's frames, such as how they look on a screen
 */
public final class BackgroundRenderer<L> implements AutoCloseable {
  /** Hears of the frames of the latest request. */
  public interface Listener<L> {
    /** More frames are there, the first among them on the first call. */
    void progressed(L light);

    /** All that will be kept is there; after the last {@link #progressed}. */
    void completed(L light);
  }

  private final LatestWorker worker;
  private final Function<FrameStore, L> prepare;
  private final Listener<L> listener;

  /** What was rendered last to its end; of the worker's runs, which follow one another. */
  private volatile Optional<FrameStore> last = Optional.empty();

  /**
   * @param thread runs the listener, such as on the screen's thread
   * @param prepare is called in the background, before any frame of a scene is there
   */
  public BackgroundRenderer(
      Executor thread, Function<FrameStore, L> prepare, Listener<L> listener) {
    this.worker = LatestWorker.named("renderer", thread, LatestWorker.Ending.INTERRUPT);
    this.prepare = prepare;
    this.listener = listener;
  }

  /** Renders this scene, in place of any other. */
  public void request(Rig rig, Scene scene) {
    worker.request(
        turn -> {
          FrameStore frames = new FrameStore(FrameTable.of(rig, scene), last);
          L light = prepare.apply(frames);
          frames.render(() -> turn.show(() -> listener.progressed(light)));
          last = Optional.of(frames);
          turn.show(() -> listener.completed(light));
        });
  }

  /** Ends what is in hand. */
  public void cancel() {
    worker.cancel();
  }

  /** Cancels, and ends the thread. */
  @Override
  public void close() {
    worker.close();
  }
}
