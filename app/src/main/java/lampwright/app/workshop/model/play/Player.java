package lampwright.app.workshop.model.play;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.FrameRange;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashSpot;
import lampwright.engine.meter.SceneMeasure;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/**
 * Plays the scene on the bench by a clock: the frame shown is always the one that the lamps would
 * show by now, so that a slow screen drops frames and never lags. Before it plays what fails the
 * flash caution it says so, and such a scene begins dimmed.
 */
public final class Player {
  /** How fast time goes. */
  public enum Pace {
    FULL(1),
    HALF(2),
    FIFTH(5),
    TENTH(10);

    private final int divisor;

    Pace(int divisor) {
      this.divisor = divisor;
    }

    /** The next slower one; after the slowest the full pace. */
    public Pace next() {
      return switch (this) {
        case FULL -> HALF;
        case HALF -> FIFTH;
        case FIFTH -> TENTH;
        case TENTH -> FULL;
      };
    }

    /** Real seconds for one of the scene's. */
    public int divisor() {
      return divisor;
    }
  }

  /** What the builder wants to see at full light. */
  private record Allowed(Rig rig, Scene scene) {}

  private final Texts texts = Texts.of("drawing");
  private final Bench bench;
  private final LightService lights;
  private final Playhead playhead;
  private final Dialogs dialogs;
  private final ReadOnlyBooleanWrapper playing = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper dimmed = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper lampsCleared = new ReadOnlyBooleanWrapper();
  private final StringProperty flashNote = new SimpleStringProperty("");
  private final BooleanProperty looping = new SimpleBooleanProperty(true);
  private final ObjectProperty<Pace> pace = new SimpleObjectProperty<>(Pace.FULL);
  private final ReadOnlyObjectProperty<Optional<FlashCaution>> painted;
  private Optional<Allowed> allowed = Optional.empty();
  private boolean clockRuns;
  private long startNanos;
  private int startFrame;
  // Where this clock put the playhead last.
  private int expected;

  /**
   * @param painted how what the drawing paints flashes on the screen; none while it is not known
   */
  public Player(
      Bench bench,
      LightService lights,
      Playhead playhead,
      Dialogs dialogs,
      ReadOnlyObjectProperty<Optional<FlashCaution>> painted) {
    this.bench = bench;
    this.painted = painted;
    this.lights = lights;
    this.playhead = playhead;
    this.dialogs = dialogs;
    pace.addListener((of, before, now) -> clockRuns = false);
    bench.watch(state -> state.selection().scene(), (before, now) -> pause());
    lights.reportProperty().addListener((of, before, now) -> judge());
    painted.addListener((of, before, now) -> judge());
    bench.watch(BenchState::project, (before, now) -> judge());
    judge();
  }

  public ReadOnlyBooleanProperty playingProperty() {
    return playing.getReadOnlyProperty();
  }

  /** Whether the preview is held below the light that makes a flash. */
  public ReadOnlyBooleanProperty dimmedProperty() {
    return dimmed.getReadOnlyProperty();
  }

  /**
   * Whether real lamps may follow the scene as it plays: it passes the flash check, or the builder
   * agreed to its full light.
   */
  public ReadOnlyBooleanProperty lampsClearedProperty() {
    return lampsCleared.getReadOnlyProperty();
  }

  /** What is asked about besides, where more than the drawing would flash; empty if nothing. */
  public StringProperty flashNoteProperty() {
    return flashNote;
  }

  /** Whether a scene that plays once is played again and again here; one that loops always is. */
  public BooleanProperty loopingProperty() {
    return looping;
  }

  public ObjectProperty<Pace> paceProperty() {
    return pace;
  }

  /** Plays or pauses. */
  public void toggle() {
    if (playing.get()) {
      pause();
    } else {
      play();
    }
  }

  /** Plays from the frame shown; from the first if it is the last of a scene that plays once. */
  public void play() {
    Optional<Scene> scene = bench.scene();
    if (scene.isEmpty() || !mayPlay(scene.get())) {
      return;
    }
    if (!repeats(scene.get()) && playhead.frame() == scene.get().frameCount() - 1) {
      playhead.go(0);
    }
    playhead.range().filter(r -> !r.has(playhead.frame())).ifPresent(r -> playhead.go(r.from()));
    clockRuns = false;
    playing.set(true);
  }

  public void pause() {
    playing.set(false);
  }

  /** Goes on or back by frames, and pauses. */
  public void step(int frames) {
    pause();
    bench
        .scene()
        .ifPresent(
            scene -> {
              int to = playhead.frame() + frames;
              playhead.go(repeats(scene) ? Math.floorMod(to, scene.frameCount()) : to);
            });
  }

  /** Goes to the first frame. */
  public void toStart() {
    playhead.go(0);
    clockRuns = false;
  }

  /** Goes to the last frame. */
  public void toEnd() {
    pause();
    bench.scene().ifPresent(scene -> playhead.go(scene.frameCount() - 1));
  }

  /** The moment is this, by a clock that only goes forward. */
  public void tick(long nanos) {
    Optional<Scene> scene = bench.scene();
    if (!playing.get() || scene.isEmpty()) {
      return;
    }
    int shown = playhead.frame();
    int count = scene.get().frameCount();
    // Where a hand moved the playhead, time goes on from there.
    if (!clockRuns || shown != expected) {
      clockRuns = true;
      startNanos = nanos;
      startFrame = shown;
      expected = shown;
      return;
    }
    double rate = scene.get().framesPerSecond().doubleValue() / pace.get().divisor();
    long passed = (long) Math.floor((nanos - startNanos) / 1e9 * rate + 1e-6);
    long to = startFrame + passed;
    Optional<FrameRange> range = playhead.range().filter(r -> r.has(startFrame));
    if (range.isPresent()) {
      int length = range.get().to() - range.get().from();
      playhead.go(range.get().from() + (int) ((to - range.get().from()) % length));
      expected = playhead.frame();
      return;
    }
    if (to >= count && !repeats(scene.get())) {
      playhead.go(count - 1);
      expected = playhead.frame();
      pause();
      return;
    }
    playhead.go((int) (to % count));
    expected = playhead.frame();
  }

  private boolean repeats(Scene scene) {
    return scene.loop() || looping.get();
  }

  // What was allowed once is allowed until rig or scene is another.
  private boolean mayPlay(Scene scene) {
    if (isAllowed(scene)) {
      return true;
    }
    Optional<SceneReport> report = report(scene);
    boolean lampsFail = report.map(r -> !r.measure().passesFlashCaution()).orElse(false);
    boolean screenFails = painted.get().map(p -> !p.passes()).orElse(false);
    if (!lampsFail && !screenFails) {
      // What is not measured yet begins dimmed and is not asked about.
      return true;
    }
    int answer =
        dialogs.choose(
            texts.get("flash.title"),
            (texts.get(
                        "flash.text",
                        worst(lampsFail ? report : Optional.empty(), screenFails),
                        Integer.toString(FlashCaution.MOST_FLASHES))
                    + " "
                    + flashNote.get())
                .strip(),
            List.of(texts.get("flash.dimmed"), texts.get("flash.full"), texts.get("flash.not")));
    if (answer == 1) {
      allowed = Optional.of(new Allowed(bench.project().rig(), scene));
      judge();
    }
    return answer != 2;
  }

  private boolean isAllowed(Scene scene) {
    return allowed.equals(Optional.of(new Allowed(bench.project().rig(), scene)));
  }

  private void judge() {
    Optional<Scene> scene = bench.scene();
    boolean agreed = scene.isEmpty() || isAllowed(scene.get());
    boolean lampsPass =
        scene
            .flatMap(this::report)
            .map(report -> report.measure().passesFlashCaution())
            .orElse(false);
    boolean screenPasses = painted.get().map(FlashCaution::passes).orElse(false);
    lampsCleared.set(agreed || lampsPass);
    dimmed.set(!agreed && !(lampsPass && screenPasses));
  }

  private Optional<SceneReport> report(Scene scene) {
    return lights
        .reportProperty()
        .get()
        .filter(r -> r.table().scene().equals(scene))
        .filter(r -> r.table().layout().rig().equals(bench.project().rig()));
  }

  private String worst(Optional<SceneReport> report, boolean screenFails) {
    List<String> worst = new ArrayList<>();
    report.ifPresent(
        r -> {
          SceneMeasure measure = r.measure();
          FlashSpot general = measure.worstGeneral();
          FlashSpot red = measure.worstRed();
          FlashSpot spot = red.worst().flashes() > general.worst().flashes() ? red : general;
          worst.add(
              texts.get("flash.lamps", Integer.toString(spot.worst().flashes()), words(spot, r)));
        });
    if (screenFails) {
      FlashCaution shown = painted.get().orElseThrow();
      int most = Math.max(shown.general().flashes(), shown.red().flashes());
      worst.add(texts.get("flash.screen", Integer.toString(most)));
    }
    return String.join(" ", worst);
  }

  private String words(FlashSpot spot, SceneReport report) {
    if (spot.lamp().isEmpty()) {
      return texts.get("flash.model");
    }
    String id = spot.lamp().get();
    String title = report.table().layout().rig().lamp(id).map(Lamp::title).orElse(id);
    return spot.pixel().isPresent()
        ? texts.get("flash.pixel", title, Integer.toString(spot.pixel().getAsInt()))
        : title;
  }
}
