package lampwright.app.workshop.model.situation;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.edit.SituationEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.disk.RegularFile;
import lampwright.engine.rig.Input;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.DriveReader;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.Situation;

/** A recorded drive that is replayed: its file, its strip, and where it is. */
public final class DriveModel {
  /** What is played on the screen's thread at once when it is gone through. */
  static final int MOST_FRAMES = 200_000;

  private static final int MOST_LISTED = 5;

  private record Opened(String name, Drive drive, List<Input> inputs) {}

  private final Texts texts = Texts.of("situations");
  private final Bench bench;
  private final Transmitter transmitter;
  private final Dialogs dialogs;
  private final Background disk;
  private final Executor screen;
  private final ReadOnlyObjectWrapper<Optional<DriveRun>> run =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> name =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Opened> opened = Optional.empty();
  private Optional<Show> played = Optional.empty();

  public DriveModel(
      Bench bench, Transmitter transmitter, Dialogs dialogs, Background disk, Executor screen) {
    this.bench = bench;
    this.transmitter = transmitter;
    this.dialogs = dialogs;
    this.disk = disk;
    this.screen = screen;
    bench.watch(BenchState::project, (before, now) -> changed());
  }

  public Transmitter transmitter() {
    return transmitter;
  }

  /** What the drive does; empty without a drive, or while the situations can't be played. */
  public ReadOnlyObjectProperty<Optional<DriveRun>> runProperty() {
    return run.getReadOnlyProperty();
  }

  /** The name of the drive's file. */
  public ReadOnlyObjectProperty<Optional<String>> nameProperty() {
    return name.getReadOnlyProperty();
  }

  /** The ids of the situations, that of the highest priority first. */
  public List<String> ladder() {
    return SituationEdits.ladder(bench.state().project()).stream().map(Situation::id).toList();
  }

  /** Asks for a recorded drive and opens it. */
  public void open() {
    dialogs.fileToOpen(texts.get("drive.choose"), List.of("*.csv")).ifPresent(this::open);
  }

  /** Opens a recorded drive; what is wrong with it is shown. */
  public void open(Path file) {
    List<Input> inputs = bench.project().rig().inputs();
    String shown = SafeText.text(String.valueOf(file.getFileName()), SafeText.MAX_MESSAGE);
    disk.run(
        () -> {
          try {
            byte[] bytes = RegularFile.start(file, DriveReader.MAX_BYTES + 1);
            DriveReader.Result read = DriveReader.read(bytes, inputs);
            screen.execute(() -> take(shown, inputs, read));
          } catch (IOException failed) {
            String why = String.valueOf(failed.getMessage());
            screen.execute(
                () -> dialogs.tell(texts.get("drive.title"), texts.get("drive.io", shown, why)));
          }
        });
  }

  private void take(String shown, List<Input> inputs, DriveReader.Result read) {
    if (read.drive().isEmpty()) {
      String problems =
          read.problems().stream()
              .limit(MOST_LISTED)
              .map(DriveReader.Problem::text)
              .collect(Collectors.joining("\n"));
      dialogs.tell(texts.get("drive.title"), texts.get("drive.bad", shown, problems));
      return;
    }
    Optional<Show> show = Transmitter.show(bench.project());
    if (show.isEmpty()) {
      dialogs.tell(texts.get("drive.title"), transmitter.troubleOf(bench.project()));
      return;
    }
    OptionalInt frames = read.drive().get().frames(show.get().clock());
    if (frames.isEmpty() || frames.getAsInt() > MOST_FRAMES) {
      dialogs.tell(
          texts.get("drive.title"),
          frames.isEmpty()
              ? texts.get("drive.empty", shown)
              : texts.get("drive.long", shown, frames.getAsInt(), MOST_FRAMES));
      return;
    }
    opened = Optional.of(new Opened(shown, read.drive().get(), inputs));
    name.set(Optional.of(shown));
    played = show;
    run.set(Optional.of(DriveRun.of(show.get(), read.drive().get())));
    transmitter.replay(opened.map(Opened::drive));
  }

  /** Ends the replay; the sticks work again. */
  public void close() {
    opened = Optional.empty();
    name.set(Optional.empty());
    run.set(Optional.empty());
    transmitter.replay(Optional.empty());
  }

  /** Goes to a frame of the drive, and pauses. */
  public void go(int frame) {
    run.get().ifPresent(r -> transmitter.seek(Math.max(0, Math.min(r.frames() - 1, frame))));
  }

  /** The frame of the drive that is shown. */
  public Optional<Integer> frame() {
    return run.get().isPresent()
        ? transmitter.stateProperty().get().map(ShowState::frame)
        : Optional.empty();
  }

  // The readings are of inputs by their places.
  private void changed() {
    if (opened.isEmpty()) {
      return;
    }
    if (!opened.get().inputs().equals(bench.state().project().rig().inputs())) {
      close();
      return;
    }
    Optional<Show> now =
        Transmitter.show(bench.state().project())
            .filter(show -> opened.get().drive().frames(show.clock()).orElse(0) <= MOST_FRAMES);
    // Most edits are of light: when the situations are active stays as it was.
    boolean same =
        now.isPresent()
            && run.get().isPresent()
            && now.map(Show::situations).equals(played.map(Show::situations))
            && now.map(Show::clock).equals(played.map(Show::clock));
    played = now;
    if (!same) {
      run.set(now.map(show -> DriveRun.of(show, opened.get().drive())));
    }
  }
}
