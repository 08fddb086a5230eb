package lampwright.app.workshop.model.situation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LiveFrame;
import lampwright.app.workshop.words.PlaceWords;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;
import lampwright.engine.situation.Situation;
import lampwright.engine.words.SituationWords;

/**
 * A stand-in for the transmitter of the model: a stick for each channel and a switch for each
 * switch. While it is on the situations go on frame by frame as the model's would, and the drawing
 * shows their frame. An edit begins anew, with the sticks as they are. For the screen's thread.
 */
public final class Transmitter {
  /** The longest time that is caught up with after a halt. */
  private static final double MOST_BEHIND_SECONDS = 0.5;

  private record Played(Rig rig, List<Scene> scenes, List<Situation> situations) {
    static Played of(Project project) {
      return new Played(project.rig(), project.scenes(), project.situations());
    }
  }

  private final Texts texts = Texts.of("situations");
  private final SituationWords words = new SituationWords();
  private final Bench bench;
  private final DrawingSheet sheet;
  private final Dialogs dialogs;
  private final BooleanProperty on = new SimpleBooleanProperty();
  private final BooleanProperty playing = new SimpleBooleanProperty();
  private final ReadOnlyBooleanWrapper full = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<List<InputControl>> controls =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<Optional<ShowState>> state =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> trouble =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper replaying = new ReadOnlyBooleanWrapper();
  private Optional<Drive> drive = Optional.empty();
  private Optional<Drive.Player> readings = Optional.empty();
  private Optional<ShowRun> run = Optional.empty();
  private boolean clockRuns;
  private long startNanos;
  private int startFrame;

  public Transmitter(Bench bench, DrawingSheet sheet, Dialogs dialogs) {
    this.bench = bench;
    this.dialogs = dialogs;
    this.sheet = sheet;
    bench.watch(state -> state.project().rig().inputs(), (before, now) -> laidOut(now));
    bench.watch(state -> Played.of(state.project()), (before, now) -> anew());
    on.addListener(
        (of, before, now) -> {
          full.set(false);
          playing.set(now);
          anew();
        });
    playing.addListener(
        (of, before, now) -> {
          clockRuns = false;
          if (now) {
            run.filter(this::atEnd).ifPresent(this::restart);
          }
          if (on.get()) {
            show();
          }
        });
    sheet.notesProperty().set(this::lampNote);
    laidOut(bench.state().project().rig().inputs());
  }

  /** Whether the drawing shows what the situations make of the sticks. */
  public BooleanProperty onProperty() {
    return on;
  }

  /** Whether time goes on; turned on with {@link #onProperty}. */
  public BooleanProperty playingProperty() {
    return playing;
  }

  /**
   * Whether the drawing has its full light while time goes on. What the builder will do next is not
   * known, so the flash check cannot be made beforehand, and it begins dimmed.
   */
  public ReadOnlyBooleanProperty fullProperty() {
    return full.getReadOnlyProperty();
  }

  /** Dims the drawing, or gives it its full light if the builder agrees. */
  public void setFull(boolean wanted) {
    boolean agreed =
        wanted
            && dialogs.choose(
                    texts.get("full.title"),
                    texts.get("full.text"),
                    List.of(texts.get("full.yes"), texts.get("full.no")))
                == 0;
    full.set(agreed);
    show();
  }

  /** Whether a drive takes the place of the sticks. */
  public ReadOnlyBooleanProperty replayingProperty() {
    return replaying.getReadOnlyProperty();
  }

  /** The sticks and switches, in the order of the inputs. */
  public ReadOnlyObjectProperty<List<InputControl>> controlsProperty() {
    return controls.getReadOnlyProperty();
  }

  /** The situations in the frame shown; empty while it is off. */
  public ReadOnlyObjectProperty<Optional<ShowState>> stateProperty() {
    return state.getReadOnlyProperty();
  }

  /** Why there is nothing to play. */
  public ReadOnlyObjectProperty<Optional<String>> troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** The control of an input, by its id. */
  public Optional<InputControl> control(String input) {
    return controls.get().stream().filter(c -> c.input().id().equals(input)).findFirst();
  }

  /** Puts all sticks at rest. */
  public void centre() {
    controls.get().forEach(InputControl::centre);
  }

  /** The moment is this, by a clock that only goes forward. */
  public void tick(long nanos) {
    if (run.isEmpty() || !playing.get()) {
      return;
    }
    ShowRun now = run.get();
    int frame = now.machine().frame();
    double seconds = (nanos - startNanos) / 1e9;
    long due = startFrame + (long) Math.floor(seconds * now.rate() + 1e-6);
    if (!clockRuns || (due - frame) / now.rate() > MOST_BEHIND_SECONDS) {
      clockRuns = true;
      startNanos = nanos;
      startFrame = frame;
      return;
    }
    if (due > frame) {
      step((int) (due - frame));
    }
  }

  /** Goes on by frames. */
  public void step(int frames) {
    run.ifPresent(
        now -> {
          for (int i = 0; i < frames && !atEnd(now); i++) {
            stepOnce(now);
          }
          if (atEnd(now)) {
            playing.set(false);
          }
          show();
        });
  }

  private boolean atEnd(ShowRun now) {
    return drive
        .map(d -> now.machine().frame() + 1 >= d.frames(now.show().clock()).orElse(0))
        .orElse(false);
  }

  // The sticks follow a drive, so that it is seen and they are there when it ends.
  private void stepOnce(ShowRun now) {
    if (readings.isEmpty()) {
      feed(now);
      now.step();
      return;
    }
    readings.get().feed(now.machine());
    now.step();
    List<InputControl> all = controls.get();
    for (int i = 0; i < all.size(); i++) {
      all.get(i).show(now.machine().lost(i), now.machine().value(i));
    }
  }

  private void feed(ShowRun now) {
    List<InputControl> all = controls.get();
    for (int i = 0; i < all.size(); i++) {
      all.get(i).feed(now.machine(), i);
    }
  }

  /** Which situation has a lamp, and why; empty while it is off. */
  public Optional<String> lampNote(String lamp) {
    String title = bench.project().rig().lamp(lamp).map(Titles::of).orElse(lamp);
    return state
        .get()
        .map(
            now ->
                Optional.ofNullable(now.owners().get(lamp))
                    .map(id -> texts.get("lamp.has", title, id, why(now.rungs().get(id))))
                    .orElseGet(() -> texts.get("lamp.dark", title)));
  }

  /** The same of the lamp that is selected; what to do where none is. */
  public Optional<String> selectedNote() {
    return state
        .get()
        .map(
            now ->
                bench
                    .lamp()
                    .flatMap(lamp -> lampNote(lamp.id()))
                    .orElseGet(() -> texts.get("lamp.none")));
  }

  /** What lamps are called, as one text. */
  public String titles(List<String> lamps) {
    return lamps.stream()
        .map(id -> bench.project().rig().lamp(id).map(Titles::of).orElse(id))
        .collect(Collectors.joining(", "));
  }

  /** Why a situation is as it is, in words. */
  public String why(ShowState.RungState rung) {
    return rung.last().map(words::why).orElseGet(() -> texts.get("state.never"));
  }

  private void laidOut(List<Input> inputs) {
    List<InputControl> all = new ArrayList<>();
    for (Input input : inputs) {
      InputControl made = new InputControl(input);
      control(input.id()).ifPresent(made::setAs);
      all.add(made);
    }
    controls.set(List.copyOf(all));
  }

  private void anew() {
    // Of a drive an edit shows the same moment.
    int at = drive.isPresent() ? run.map(now -> now.machine().frame()).orElse(0) : 0;
    run = Optional.empty();
    trouble.set(Optional.empty());
    clockRuns = false;
    if (on.get()) {
      begin();
      run.filter(now -> readings.isPresent()).ifPresent(now -> forward(now, at));
    }
    show();
  }

  private void begin() {
    Project project = bench.state().project();
    run = show(project).map(ShowRun::new);
    if (run.isEmpty()) {
      trouble.set(Optional.of(troubleOf(project)));
    }
    run.ifPresent(this::restart);
  }

  private void restart(ShowRun now) {
    now.restart();
    readings = drive.map(d -> new Drive.Player(d, now.show().clock()));
    List<InputControl> all = controls.get();
    for (int i = 0; i < all.size() && readings.isEmpty(); i++) {
      all.get(i).rest(now.machine(), i);
    }
    stepOnce(now);
  }

  /** The show of a project; empty where it can't be played. */
  static Optional<Show> show(Project project) {
    return Show.ifPlayable(project.rig(), project.scenes(), project.situations());
  }

  /** Why a project has no {@link #show}. */
  String troubleOf(Project project) {
    try {
      Show.of(project.rig(), project.scenes(), project.situations());
      return texts.get("trouble.noScene");
    } catch (InvalidModelException refused) {
      return PlaceWords.of(project, refused);
    }
  }

  /** Replays a drive from its beginning, in place of the sticks; none: the sticks work again. */
  void replay(Optional<Drive> recorded) {
    drive = recorded;
    readings = Optional.empty();
    run = Optional.empty();
    replaying.set(recorded.isPresent());
    if (on.get()) {
      playing.set(recorded.isEmpty());
      anew();
    } else if (recorded.isPresent()) {
      on.set(true);
      playing.set(false);
    }
  }

  /** Goes to a frame of the drive that is replayed, and pauses. */
  void seek(int frame) {
    playing.set(false);
    if (!on.get()) {
      on.set(true);
      playing.set(false);
    }
    run.filter(now -> readings.isPresent())
        .ifPresent(
            now -> {
              if (now.machine().frame() > frame) {
                restart(now);
              }
              forward(now, frame);
              show();
            });
  }

  private void forward(ShowRun now, int frame) {
    while (now.machine().frame() < frame && !atEnd(now)) {
      stepOnce(now);
    }
  }

  private void show() {
    state.set(run.map(ShowRun::state));
    sheet
        .liveProperty()
        .set(
            run.map(now -> new LiveFrame(now.screen(), now.bytes(), playing.get() && !full.get())));
  }
}
