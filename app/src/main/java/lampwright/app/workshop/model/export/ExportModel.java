package lampwright.app.workshop.model.export;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import lampwright.app.export.ExportFormats;
import lampwright.app.export.ExportPart;
import lampwright.app.export.ExportRun;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.files.Failures;
import lampwright.app.workshop.words.PlaceWords;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.review.Finding;
import lampwright.engine.scene.Scene;
import lampwright.engine.work.LatestWorker;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;

/**
 * An export of the project as it is when the model is made. For the screen's thread; what takes
 * longer than a frame is done in the background.
 */
public final class ExportModel {
  /** How far it has come. */
  public sealed interface Stage {
    /** The builder chooses; nothing is written. */
    record Choosing() implements Stage {}

    /**
     * It is being written.
     *
     * @param what is written now
     */
    record Writing(String what) implements Stage {}

    /** All stands in its place: these files and folders. */
    record Done(List<Path> written) implements Stage {}

    /** Nothing was changed; this is why, with what can be done. */
    record Failed(String why) implements Stage {}
  }

  private final Texts texts = Texts.of("export");
  private final Project project;
  private final Dialogs dialogs;
  private final LatestWorker worker;
  private final Executor screen;
  private final List<ExportChoice> scenes;
  private final List<ExportChoice> formats;
  private final ObjectProperty<Optional<Path>> folder;
  private final StringProperty address;
  private final ReadOnlyObjectWrapper<ExportPreview> preview =
      new ReadOnlyObjectWrapper<>(ExportPreview.NOTHING);
  private final ReadOnlyObjectWrapper<Stage> stage =
      new ReadOnlyObjectWrapper<>(new Stage.Choosing());
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
  private final BooleanBinding ready;
  private final Previewer previewer;

  /**
   * @param first id of the scene on the bench, which is selected at first; all if there is none
   * @param last how it was exported last time
   * @param worker writes and measures; one whose work asks whether it is overtaken
   */
  public ExportModel(
      Project project,
      Optional<String> first,
      ExportWishes last,
      Dialogs dialogs,
      LatestWorker worker,
      Executor screen) {
    this.project = project;
    this.dialogs = dialogs;
    this.worker = worker;
    this.screen = screen;
    this.previewer = new Previewer(project);
    this.scenes =
        project.scenes().stream()
            .map(s -> new ExportChoice(s.id(), first.isEmpty() || first.get().equals(s.id())))
            .toList();
    List<String> keys = ExportFormats.keys(project.rig());
    List<String> wished = keys.stream().filter(last.formats()::contains).toList();
    List<String> ticked = wished.isEmpty() ? keys.subList(0, 1) : wished;
    this.formats = keys.stream().map(key -> new ExportChoice(key, ticked.contains(key))).toList();
    this.folder = new SimpleObjectProperty<>(last.folder());
    this.address = new SimpleStringProperty(last.address());
    this.ready =
        Bindings.createBooleanBinding(
            () -> run().isPresent() && preview.get().refusals().isEmpty() && !writing(),
            preview,
            stage,
            this.folder);
    scenes.forEach(choice -> choice.chosenProperty().addListener((of, before, now) -> refresh()));
    formats.forEach(choice -> choice.chosenProperty().addListener((of, before, now) -> refresh()));
    this.folder.addListener((of, before, now) -> refresh());
    address.addListener((of, before, now) -> refresh());
    refresh();
  }

  /** The project's scenes. */
  public List<ExportChoice> scenes() {
    return scenes;
  }

  /** Every format. */
  public List<ExportChoice> formats() {
    return formats;
  }

  /** Where the files go. */
  public ObjectProperty<Optional<Path>> folderProperty() {
    return folder;
  }

  /** Address of the first byte in hex files, as people write it. */
  public StringProperty addressProperty() {
    return address;
  }

  /** How it is to be exported now, for the next time. */
  public ExportWishes wishes() {
    return new ExportWishes(folder.get(), chosenFormats(), address.get());
  }

  /** A finding in one line, with its place by the names of the project. */
  public String line(Finding finding) {
    return PlaceWords.line(project, finding);
  }

  /** What will be written. */
  public ReadOnlyObjectProperty<ExportPreview> previewProperty() {
    return preview.getReadOnlyProperty();
  }

  /** How far it has come. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** How much of the part that is written now is done, 0 to 1. */
  public ReadOnlyDoubleProperty progressProperty() {
    return progress.getReadOnlyProperty();
  }

  /** Whether it can be written as it is selected. */
  public BooleanBinding readyBinding() {
    return ready;
  }

  /** Asks for the folder. */
  public void askFolder() {
    dialogs.folder(texts.get("folder.title")).ifPresent(path -> folder.set(Optional.of(path)));
  }

  /** Ends what is being written or measured; what was there before stays. */
  public void cancel() {
    worker.cancel();
    if (writing()) {
      stage.set(new Stage.Failed(texts.get("cancelled")));
    }
  }

  /** Writes it, once files in its place are known to the builder. */
  public void write() {
    Optional<ExportRun> run = run();
    if (run.isEmpty() || !ready.get()) {
      return;
    }
    stage.set(new Stage.Writing(texts.get("writing.begins")));
    progress.set(0);
    worker.request(
        turn -> {
          Stage end = writeNow(run.get(), turn);
          screen.execute(() -> ended(end, turn.overtaken()));
        });
  }

  private void ended(Stage end, boolean cancelled) {
    if (!cancelled) {
      stage.set(end);
      preview();
    } else if (end instanceof Stage.Done) {
      // It was asked to end too late.
      stage.set(end);
    }
  }

  private boolean writing() {
    return stage.get() instanceof Stage.Writing;
  }

  private Stage writeNow(ExportRun run, LatestWorker.Turn turn) {
    List<Path> written = new ArrayList<>();
    ExportRun.Watcher watcher =
        new ExportRun.Watcher() {
          @Override
          public Progress begins(ExportPart part) {
            String what =
                part.scene()
                    .map(id -> texts.get("writing.scene", id, part.format()))
                    .orElseGet(() -> texts.get(ofAllScenes(part), part.format()));
            turn.show(() -> stage.set(new Stage.Writing(what)));
            return progress(turn);
          }

          @Override
          public void ends() {}
        };
    try {
      run.write(watcher, written::add);
      return new Stage.Done(List.copyOf(written));
    } catch (ExportRefusedException refused) {
      return new Stage.Failed(String.valueOf(refused.getMessage()));
    } catch (IOException failed) {
      return new Stage.Failed(Failures.words(failed));
    } catch (CancelledException cancelled) {
      return new Stage.Failed(texts.get("cancelled"));
    }
  }

  private static String ofAllScenes(ExportPart part) {
    return part.format().equals(ExportFormats.FIRMWARE) ? "writing.folder" : "writing.situations";
  }

  // Called for each frame, so the screen hears of each percent alone.
  private Progress progress(LatestWorker.Turn turn) {
    int[] shown = {-1};
    return (done, total) -> {
      if (turn.overtaken()) {
        throw new CancelledException();
      }
      int percent = (int) (100L * done / Math.max(1, total));
      if (percent != shown[0]) {
        shown[0] = percent;
        turn.show(() -> progress.set(percent / 100.0));
      }
    };
  }

  private void refresh() {
    if (!writing()) {
      stage.set(new Stage.Choosing());
      preview();
    }
  }

  private void preview() {
    List<Scene> chosen = chosenScenes();
    List<String> faults = faults();
    Optional<ExportRun> run = run();
    worker.request(
        turn -> {
          try {
            previewer.find(
                chosen, run, faults, progress(turn), found -> turn.show(() -> preview.set(found)));
          } catch (CancelledException overtaken) {
            // Something else is wanted now.
          }
        });
  }

  private List<Scene> chosenScenes() {
    return scenes.stream()
        .filter(ExportChoice::chosen)
        .flatMap(choice -> project.scene(choice.key()).stream())
        .toList();
  }

  private List<String> chosenFormats() {
    return formats.stream().filter(ExportChoice::chosen).map(ExportChoice::key).toList();
  }

  private List<String> faults() {
    List<String> faults = new ArrayList<>();
    if (chosenScenes().isEmpty()) {
      faults.add(texts.get("fault.scenes"));
    }
    if (chosenFormats().isEmpty()) {
      faults.add(texts.get("fault.formats"));
    }
    if (folder.get().isEmpty()) {
      faults.add(texts.get("fault.folder"));
    }
    if (options().isEmpty()) {
      faults.add(
          texts.get(
              "fault.address", address.get(), ExportOptions.address(ExportOptions.MAX_ADDRESS)));
    }
    return faults;
  }

  private Optional<ExportOptions> options() {
    if (!chosenFormats().contains(ExportFormats.HEX)) {
      return Optional.of(ExportOptions.DEFAULT);
    }
    try {
      return Optional.of(ExportFormats.optionsAt(address.get().trim()));
    } catch (InvalidModelException | NumberFormatException notAnAddress) {
      return Optional.empty();
    }
  }

  private Optional<ExportRun> run() {
    List<Scene> chosen = chosenScenes();
    List<String> keys = chosenFormats();
    if (chosen.isEmpty() || keys.isEmpty()) {
      return Optional.empty();
    }
    return folder
        .get()
        .flatMap(
            place -> options().map(options -> ExportRun.of(project, chosen, keys, options, place)));
  }
}
