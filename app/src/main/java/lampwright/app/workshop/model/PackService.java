package lampwright.app.workshop.model;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.engine.check.Fault;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.Situation;
import lampwright.engine.work.LatestWorker;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/**
 * Packs all scenes of the project in the background, a little after the last edit, to know what
 * they take of the controller's memory. Its properties change on the screen's thread alone.
 */
public final class PackService implements AutoCloseable {
  /**
   * What packing gave.
   *
   * @param bytes of packed data; 0 if it can't be packed
   * @param reacts whether the project's situations are in it
   * @param refusals why it can't, or why it does not fit the controller
   */
  public record Packed(int bytes, boolean reacts, List<Finding> refusals) {
    public Packed {
      refusals = List.copyOf(refusals);
    }
  }

  private record Wanted(Rig rig, List<Scene> scenes, List<Situation> situations) {}

  private static final Duration REST = Duration.ofMillis(800);

  private final Bench bench;
  private final LatestWorker packer;
  private final ReadOnlyObjectWrapper<Optional<Packed>> packed =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper(1);
  private Optional<Wanted> wanted = Optional.empty();

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public PackService(Bench bench, Executor screen) {
    this.bench = bench;
    this.packer = LatestWorker.named("packer", screen, LatestWorker.Ending.INTERRUPT);
    bench.watch(BenchState::project, (before, now) -> refresh());
    refresh();
  }

  /** What all scenes take packed; empty until that is known. */
  public ReadOnlyObjectProperty<Optional<Packed>> packedProperty() {
    return packed.getReadOnlyProperty();
  }

  /** How far the packing has come, 0 to 1; 1 when nothing is in hand. */
  public ReadOnlyDoubleProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** Stops packing until the next edit. */
  public void cancel() {
    packer.cancel();
    progress.set(1);
  }

  /** Ends the thread. */
  @Override
  public void close() {
    packer.close();
  }

  private void refresh() {
    Project project = bench.project();
    Optional<Wanted> now =
        project.scenes().isEmpty()
            ? Optional.empty()
            : Optional.of(new Wanted(project.rig(), project.scenes(), project.situations()));
    if (now.equals(wanted)) {
      return;
    }
    cancel();
    wanted = now;
    packed.set(Optional.empty());
    now.ifPresent(
        w -> {
          progress.set(0);
          packer.request(REST, turn -> pack(project, turn));
        });
  }

  private void pack(Project of, LatestWorker.Turn turn) {
    try {
      Packed found = packed(ProjectJob.of(of, of.scenes()), turn);
      turn.show(
          () -> {
            progress.set(1);
            packed.set(Optional.of(found));
          });
    } catch (CancelledException overtaken) {
      // A newer one is wanted, or none.
    }
  }

  private Packed packed(ProjectJob job, LatestWorker.Turn turn) throws CancelledException {
    List<FrameTable> tables = job.tables();
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    Optional<Show> show = job.show();
    List<Fault> faults = ScenePacker.faults(tables);
    if (!faults.isEmpty()) {
      return new Packed(0, show.isPresent(), ExportFacts.refused("firmware", faults));
    }
    int[] shown = {0};
    try {
      byte[] data =
          ScenePacker.pack(
                  "packed",
                  tables,
                  show,
                  target.decodeCost(),
                  (done, total) -> {
                    if (turn.overtaken()) {
                      throw new CancelledException();
                    }
                    int percent = (int) (100L * done / Math.max(1, total));
                    if (percent > shown[0]) {
                      shown[0] = percent;
                      turn.show(() -> progress.set(percent / 100.0));
                    }
                  })
              .data();
      List<Finding> tooLarge =
          rig.controller().isPresent() ? FirmwareMemory.refusals(target, job, data) : List.of();
      return new Packed(data.length, show.isPresent(), tooLarge);
    } catch (ExportRefusedException tooLong) {
      return new Packed(0, show.isPresent(), tooLong.refusals());
    }
  }
}
