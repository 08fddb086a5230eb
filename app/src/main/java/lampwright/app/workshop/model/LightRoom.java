package lampwright.app.workshop.model;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import org.jspecify.annotations.Nullable;

/**
 * Renders and measures the scene on the bench in the background, anew after every edit; an edit in
 * the middle ends what is in hand. Its properties change on the screen's thread alone.
 */
public final class LightRoom implements AutoCloseable {
  private record Wanted(Rig rig, Scene scene) {}

  private static final long REST_MS = 120;

  private final Bench bench;
  private final Executor screen;
  private final ExecutorService renderer = Executors.newSingleThreadExecutor(LightRoom::quiet);
  private final ScheduledExecutorService meter =
      Executors.newSingleThreadScheduledExecutor(LightRoom::quiet);
  private final ReadOnlyObjectWrapper<Optional<SceneLight>> light =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<SceneReport>> report =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyLongWrapper progress = new ReadOnlyLongWrapper();
  private final ReadOnlyBooleanWrapper measuring = new ReadOnlyBooleanWrapper();
  private Optional<Wanted> wanted = Optional.empty();
  private @Nullable Future<?> rendering;
  private @Nullable Future<?> measurement;

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public LightRoom(Bench bench, Executor screen) {
    this.bench = bench;
    this.screen = screen;
    bench.projectProperty().addListener((of, before, now) -> look());
    bench.selectionProperty().addListener((of, before, now) -> look());
    look();
  }

  /** The light of the scene on the bench; the frames of it come in while it is looked at. */
  public ReadOnlyObjectProperty<Optional<SceneLight>> lightProperty() {
    return light.getReadOnlyProperty();
  }

  /** Changes whenever more frames of {@link #lightProperty} are there. */
  public ReadOnlyLongProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /**
   * What was measured of it; the measure of the scene before an edit stays until the next is there.
   */
  public ReadOnlyObjectProperty<Optional<SceneReport>> reportProperty() {
    return report.getReadOnlyProperty();
  }

  /** Whether {@link #reportProperty} is out of date. */
  public ReadOnlyBooleanProperty measuringProperty() {
    return measuring.getReadOnlyProperty();
  }

  /** Ends the threads. */
  @Override
  public void close() {
    renderer.shutdownNow();
    meter.shutdownNow();
  }

  private void look() {
    Project project = bench.project();
    Optional<Wanted> now = bench.scene().map(scene -> new Wanted(project.rig(), scene));
    if (now.equals(wanted)) {
      return;
    }
    boolean other = !now.map(w -> w.scene().id()).equals(wanted.map(w -> w.scene().id()));
    wanted = now;
    cancel(rendering);
    cancel(measurement);
    if (other || now.isEmpty()) {
      light.set(Optional.empty());
      report.set(Optional.empty());
    }
    measuring.set(now.isPresent());
    now.ifPresent(
        w -> {
          rendering = renderer.submit(() -> render(w));
        });
  }

  private void render(Wanted of) {
    try {
      SceneLight rendered = new SceneLight(FrameTable.of(of.rig(), of.scene()));
      rendered.render(() -> screen.execute(() -> show(of, rendered)));
      screen.execute(() -> rest(of, rendered));
    } catch (CancellationException overtaken) {
      // A newer one is wanted.
    }
  }

  private void show(Wanted of, SceneLight rendered) {
    if (!wanted.equals(Optional.of(of))) {
      return;
    }
    if (light.get().filter(now -> now == rendered).isEmpty()) {
      light.set(Optional.of(rendered));
    }
    progress.set(progress.get() + 1);
  }

  // While a hand drags, every moment is another scene: only one that stays is measured.
  private void rest(Wanted of, SceneLight rendered) {
    if (wanted.equals(Optional.of(of))) {
      measurement = meter.schedule(() -> measure(of, rendered), REST_MS, TimeUnit.MILLISECONDS);
    }
  }

  private void measure(Wanted of, SceneLight rendered) {
    try {
      SceneReport found = rendered.measure();
      screen.execute(
          () -> {
            if (wanted.equals(Optional.of(of))) {
              measuring.set(false);
              report.set(Optional.of(found));
            }
          });
    } catch (CancellationException overtaken) {
      // A newer one is wanted.
    }
  }

  private static void cancel(@Nullable Future<?> work) {
    if (work != null) {
      work.cancel(true);
    }
  }

  private static Thread quiet(Runnable work) {
    Thread thread = new Thread(work, "light-room");
    thread.setDaemon(true);
    return thread;
  }
}
