package lampwright.app.workshop.model.sound;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.value.ObservableValue;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.sound.SoundClip;
import lampwright.app.workshop.sound.SoundFault;
import lampwright.app.workshop.sound.SoundFault.Reason;
import lampwright.app.workshop.sound.SoundFile;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Scene;
import lampwright.engine.work.LatestWorker;

/** The guide sound of the scene on the bench, read in the background. */
public final class GuideTrack implements AutoCloseable {
  private record Wanted(String file, Optional<Path> project) {}

  private final Bench bench;
  private final ObservableValue<Optional<Path>> projectFile;
  private final LatestWorker reader;
  private final BooleanProperty muted = new SimpleBooleanProperty();
  private final ReadOnlyObjectWrapper<Optional<SoundClip>> clip =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Reason>> fault =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Wanted> read = Optional.empty();

  /**
   * @param projectFile where the project was saved
   * @param screen runs what it is given on the screen's thread
   */
  public GuideTrack(Bench bench, ObservableValue<Optional<Path>> projectFile, Executor screen) {
    this.bench = bench;
    this.projectFile = projectFile;
    reader = LatestWorker.named("guide-reader", screen, LatestWorker.Ending.ASK);
    bench.watch(state -> state.scene().flatMap(Scene::guideSound), (before, now) -> refresh());
    projectFile.addListener((of, before, now) -> refresh());
    refresh();
  }

  /** What the scene on the bench names. */
  public Optional<GuideSound> sound() {
    return bench.scene().flatMap(Scene::guideSound);
  }

  /** What was read of it. */
  public ReadOnlyObjectProperty<Optional<SoundClip>> clipProperty() {
    return clip.getReadOnlyProperty();
  }

  public Optional<SoundClip> clip() {
    return clip.get();
  }

  /** Why there is nothing to hear or see. */
  public ReadOnlyObjectProperty<Optional<Reason>> faultProperty() {
    return fault.getReadOnlyProperty();
  }

  /** Whether it is silent: the workshop's, not the scene's. */
  public BooleanProperty mutedProperty() {
    return muted;
  }

  @Override
  public void close() {
    reader.close();
  }

  private void refresh() {
    Optional<Wanted> wanted = sound().map(s -> new Wanted(s.file(), projectFile.getValue()));
    if (wanted.equals(read)) {
      return;
    }
    read = wanted;
    reader.cancel();
    clip.set(Optional.empty());
    fault.set(Optional.empty());
    if (wanted.isEmpty()) {
      return;
    }
    Optional<Path> folder =
        wanted.get().project().flatMap(f -> Optional.ofNullable(f.toAbsolutePath().getParent()));
    if (folder.isEmpty()) {
      fault.set(Optional.of(Reason.MISSING));
      return;
    }
    GuideSound sound = sound().orElseThrow();
    reader.request(turn -> read(folder.get(), sound, turn));
  }

  private void read(Path folder, GuideSound sound, LatestWorker.Turn turn) {
    try {
      SoundClip found = SoundFile.read(folder, sound.in(folder), turn::overtaken);
      turn.show(() -> clip.set(Optional.of(found)));
    } catch (SoundFault unreadable) {
      turn.show(() -> fault.set(Optional.of(unreadable.reason())));
    } catch (InvalidPathException nowhere) {
      turn.show(() -> fault.set(Optional.of(Reason.MISSING)));
    }
  }
}
