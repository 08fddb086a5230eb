package lampwright.app.workshop.model;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.BackgroundRenderer;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.work.LatestWorker;

/**
 * Renders and measures the scene on the bench in the background, anew after every edit; an edit in
 * the middle ends what is in hand. Its properties change on the screen's thread alone.
 */
public final class LightService implements AutoCloseable {
  private record Wanted(Rig rig, Scene scene) {}

  private static final Duration REST = Duration.ofMillis(120);

  private final Bench bench;
  private final BackgroundRenderer<SceneLight> renderer;
  private final LatestWorker meter;
  private final ReadOnlyObjectWrapper<Optional<SceneLight>> light =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<SceneReport>> report =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyLongWrapper progress = new ReadOnlyLongWrapper();
  private final ReadOnlyBooleanWrapper measuring = new ReadOnlyBooleanWrapper();
  private Optional<Wanted> wanted = Optional.empty();

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public LightService(Bench bench, Executor screen) {
    this.bench = bench;
    this.renderer = new BackgroundRenderer<>(screen, SceneLight::of, new Shown());
    this.meter = LatestWorker.named("meter", screen, LatestWorker.Ending.INTERRUPT);
    bench.watch(BenchState::contents, (before, now) -> refresh());
    refresh();
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
    renderer.close();
    meter.close();
  }

  private void refresh() {
    Project project = bench.project();
    Optional<Wanted> now = bench.scene().map(scene -> new Wanted(project.rig(), scene));
    if (now.equals(wanted)) {
      return;
    }
    boolean other = !now.map(w -> w.scene().id()).equals(wanted.map(w -> w.scene().id()));
    wanted = now;
    renderer.cancel();
    meter.cancel();
    if (other || now.isEmpty()) {
      light.set(Optional.empty());
      report.set(Optional.empty());
    }
    measuring.set(now.isPresent());
    now.ifPresent(w -> renderer.request(w.rig(), w.scene()));
  }

  private final class Shown implements BackgroundRenderer.Listener<SceneLight> {
    @Override
    public void progressed(SceneLight rendered) {
      if (!light.get().equals(Optional.of(rendered))) {
        light.set(Optional.of(rendered));
      }
      progress.set(progress.get() + 1);
    }

    // While a hand drags, every moment is another scene: only one that stays is measured.
    @Override
    public void completed(SceneLight rendered) {
      meter.request(REST, turn -> measure(rendered, turn));
    }
  }

  private void measure(SceneLight rendered, LatestWorker.Turn turn) {
    SceneReport found = rendered.measure();
    turn.show(
        () -> {
          measuring.set(false);
          report.set(Optional.of(found));
        });
  }
}
