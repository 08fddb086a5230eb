package lampwright.app.workshop.model.start;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import lampwright.app.outline.Models;
import lampwright.app.picture.LitFrame;
import lampwright.app.review.Reviews;
import lampwright.app.start.ModelRequest;
import lampwright.app.start.NewModel;
import lampwright.app.workshop.model.drawing.OwnPicture;
import lampwright.app.workshop.model.files.FilesModel;
import lampwright.app.workshop.model.files.Leftover;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.Checks;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Rig;
import lampwright.engine.work.LatestWorker;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.target.Target;

/** What the start sheet shows and does. For the screen's thread. */
public final class StartModel implements AutoCloseable {
  /**
   * What would be made.
   *
   * @param of the request
   * @param made the project
   * @param light the picture of it
   * @param refusals why it does not fit its controller; empty if it does
   * @param levelLow whether the data line needs a level shifter
   */
  public record Outcome(
      ModelRequest of,
      NewModel.Made made,
      Optional<LitFrame> light,
      List<Finding> refusals,
      boolean levelLow) {
    public Outcome {
      refusals = List.copyOf(refusals);
    }
  }

  /** A figure of the title block: what it is, its value, and a second line. */
  public record Figure(String label, String value, String more) {}

  private static final int MOST_RECENT = 6;

  private final Texts texts = Texts.of("start");
  private final FilesModel files;
  private final Runnable done;
  private final LatestWorker worker;
  private final LatestWorker sampler;
  private final ReadOnlyObjectWrapper<ModelRequest> request;
  private final ReadOnlyObjectWrapper<Optional<Outcome>> outcome =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> refusal =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final LatestWorker recentReader;
  private final OwnPicture own;
  private final ListChangeListener<Path> relist = change -> listRecents();
  private final ObservableList<RecentFile> recents = FXCollections.observableArrayList();
  private final ReadOnlyObjectWrapper<Optional<Path>> ownPicture =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<LitFrame> samples = FXCollections.observableArrayList();

  /**
   * @param own asks for a picture of the builder's model, and puts it on the bench
   * @param screen runs what it is given on the screen's thread
   * @param done called once there is something on the bench, or the sheet is left
   */
  public StartModel(FilesModel files, OwnPicture own, Executor screen, Runnable done) {
    this.own = own;
    this.files = files;
    this.done = done;
    this.worker = LatestWorker.named("start", screen, LatestWorker.Ending.INTERRUPT);
    this.sampler = LatestWorker.named("samples", screen, LatestWorker.Ending.INTERRUPT);
    this.request =
        new ReadOnlyObjectWrapper<>(named(ModelRequest.usual(ModelKind.RECOVERY_VEHICLE)));
    this.recentReader = LatestWorker.named("recent", screen, LatestWorker.Ending.INTERRUPT);
    files.recents().list().addListener(relist);
    listRecents();
    request.addListener((of, before, now) -> reckon());
    reckon();
    sampler.request(
        turn -> {
          for (Project sample : Samples.all()) {
            LitFrame.of(sample).ifPresent(light -> turn.show(() -> samples.add(light)));
          }
        });
  }

  /** What is requested. */
  public ReadOnlyObjectProperty<ModelRequest> requestProperty() {
    return request.getReadOnlyProperty();
  }

  public ModelRequest request() {
    return request.get();
  }

  /** What would be made of the request, or of the one before until that is reckoned. */
  public ReadOnlyObjectProperty<Optional<Outcome>> outcomeProperty() {
    return outcome.getReadOnlyProperty();
  }

  /** Why nothing can be made of the request, in words; empty if something can. */
  public ReadOnlyObjectProperty<Optional<String>> refusalProperty() {
    return refusal.getReadOnlyProperty();
  }

  /** The samples, which come in one after another. */
  public ObservableList<LitFrame> samples() {
    return samples;
  }

  /** The files opened or saved last; their pictures come in later. */
  public ObservableList<RecentFile> recents() {
    return recents;
  }

  /** Unsaved work of earlier times. */
  public ObservableList<Leftover> leftovers() {
    return files.leftovers();
  }

  /** Brings unsaved work back. */
  public void recover(Leftover left) {
    files.recover(left, done);
  }

  /** Removes unsaved work, if the builder is sure. */
  public void discard(Leftover left) {
    files.discard(left);
  }

  /** The builder's own picture of the model, in place of the drawing of its main side. */
  public ReadOnlyObjectProperty<Optional<Path>> ownPictureProperty() {
    return ownPicture.getReadOnlyProperty();
  }

  /** Asks for a picture of the model; another one replaces it. */
  public void chooseOwnPicture() {
    own.ask(file -> ownPicture.set(Optional.of(file)));
  }

  /** Takes the drawing again. */
  public void dropOwnPicture() {
    ownPicture.set(Optional.empty());
  }

  private void listRecents() {
    List<Path> now = files.recents().list().stream().limit(MOST_RECENT).toList();
    recents.setAll(now.stream().map(RecentFile::unread).toList());
    recentReader.request(
        turn -> {
          for (int k = 0; k < now.size(); k++) {
            RecentFile read = RecentFile.read(now.get(k));
            int at = k;
            turn.show(() -> recents.set(at, read));
          }
        });
  }

  /** Another kind of model, with its usual lamps; the controller stays. */
  public void choose(ModelKind kind) {
    if (kind != request().kind()) {
      ModelRequest usual = ModelRequest.usual(kind).withController(request().controller());
      boolean ownName = !request().name().equals(suggested(request().kind()));
      set(now -> ownName ? usual.withName(now.name()) : named(usual));
    }
  }

  /** So many lamps of a group. */
  public void count(String group, int count) {
    set(now -> now.withCount(group, count));
  }

  public void choose(Controller controller) {
    set(now -> now.withController(controller));
  }

  public void name(String name) {
    set(now -> now.withName(name));
  }

  private void set(UnaryOperator<ModelRequest> change) {
    request.set(change.apply(request()));
  }

  private ModelRequest named(ModelRequest asked) {
    return asked.withName(suggested(asked.kind()));
  }

  private String suggested(ModelKind kind) {
    return texts.get("name.suggested", Models.title(kind));
  }

  private void reckon() {
    ModelRequest asked = request();
    if (asked.lamps() == 0) {
      worker.cancel();
      refusal.set(Optional.of(texts.get("refusal.none")));
      return;
    }
    refusal.set(Optional.empty());
    worker.request(
        turn -> {
          Outcome found;
          try {
            found = reckoned(asked);
          } catch (InvalidModelException wrong) {
            String words = texts.get("refusal.name", String.valueOf(wrong.getMessage()));
            turn.show(() -> refusal.set(Optional.of(words)));
            return;
          } catch (CancelledException overtaken) {
            return;
          }
          turn.show(() -> show(found));
        });
  }

  private static Outcome reckoned(ModelRequest asked) throws CancelledException {
    NewModel.Made made = NewModel.make(asked);
    boolean low =
        Reviews.ALL.ofProject(made.project()).stream()
            .anyMatch(finding -> finding.code() == Code.DATA_LEVEL_LOW);
    return new Outcome(
        asked,
        made,
        LitFrame.of(made.project()),
        NewModel.refusals(made.project(), Progress.SILENT),
        low);
  }

  private void show(Outcome found) {
    outcome.set(Optional.of(found));
    refusal.set(
        found.refusals().stream()
            .findFirst()
            .map(
                first ->
                    texts.get(
                        "refusal.fit",
                        first.about(),
                        first.what(),
                        first.limit().isEmpty() ? "" : "; " + first.limit())));
  }

  /** What a controller is, in plain words. */
  public String words(Controller controller) {
    return texts.get("controller." + controller.id());
  }

  /** How the light comes to a controller. */
  public String way(Controller controller) {
    return texts.get(Target.of(controller).drivesPins() ? "way.firmware" : "way.hook");
  }

  /** The figures of the title block. */
  public List<Figure> figures() {
    if (outcome.get().isEmpty()) {
      return List.of();
    }
    NewModel.Made made = outcome.get().get().made();
    Rig rig = made.project().rig();
    int chains = rig.chains().size();
    return List.of(
        new Figure(texts.get("figure.lamps"), Integer.toString(rig.lamps().size()), asPixels(made)),
        new Figure(
            texts.get("figure.leds"),
            texts.get("figure.pixels", made.pixels(), chains),
            texts.get("figure.plain", rig.outputs().size())),
        new Figure(
            texts.get("figure.peak"),
            texts.get(
                "figure.current", amps(made.peakMilliamps()), Checks.plain(rig.supplyVolts())),
            texts.get("figure.supply", amps(rig.supplyLimitMilliamps()))),
        new Figure(
            texts.get("figure.data"),
            made.dataVolts().isPresent()
                ? texts.get("figure.volts", Checks.plain(made.dataVolts().getAsDouble()))
                : texts.get("figure.noData"),
            outcome.get().get().levelLow() ? texts.get("figure.shifter") : ""));
  }

  private String asPixels(NewModel.Made made) {
    return made.asPixels().isEmpty()
        ? ""
        : texts.get("figure.asPixels", String.join(", ", made.asPixels()));
  }

  private static String amps(double milliamps) {
    return String.format(Locale.ROOT, "%.2f", milliamps / 1000);
  }

  /** Makes the project, as one step that can be undone. Returns whether it could. */
  public boolean make() {
    ModelRequest asked = request();
    if (refusal.get().isPresent()) {
      return false;
    }
    try {
      if (outcome.get().filter(found -> found.of().equals(asked)).isEmpty()) {
        show(reckoned(asked));
        if (refusal.get().isPresent()) {
          return false;
        }
      }
    } catch (InvalidModelException wrong) {
      refusal.set(Optional.of(texts.get("refusal.name", String.valueOf(wrong.getMessage()))));
      return false;
    } catch (CancelledException never) {
      return false;
    }
    Project project = outcome.get().orElseThrow().made().project();
    Optional<Path> picture = ownPicture.get();
    files.make(
        texts.get("edit.make"),
        project,
        () -> {
          done.run();
          // A picture is kept beside the project's file, so there must be one.
          picture.ifPresent(file -> files.save(() -> own.use(file)));
        });
    return true;
  }

  /** Opens a sample as a project of its own. */
  public void open(LitFrame sample) {
    files.begin(sample.project(), done);
  }

  /** Opens a file. */
  public void open(Path file) {
    done.run();
    files.open(file);
  }

  /** Asks which file to open. */
  public void open() {
    done.run();
    files.open();
  }

  /** Leaves the sheet: what is on the bench stays. */
  public void skip() {
    done.run();
  }

  @Override
  public void close() {
    files.recents().list().removeListener(relist);
    recentReader.close();
    worker.close();
    sampler.close();
  }
}
