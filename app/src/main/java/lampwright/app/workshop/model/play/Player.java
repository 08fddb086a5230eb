package lampwright.app.workshop.model.play;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.model.Asker;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.LightRoom;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.scene.Scene;

/**
 * Plays the scene on the bench by a clock: the frame shown is always the one that the lamps would
 * show by now, so that a slow screen drops frames and never lags. Before it plays what fails the
 * flash caution it says so, and such a scene begins dimmed.
 */
public final class Player {
  /**
   * No lamp adds more light to a dimmed preview than this share of the screen's white: less than
   * the tenth that makes a flash, and with saturated red less than the 20 of (R - G - B) x 320 that
   * makes a red one (W3C WCAG 2.2, general flash and red flash thresholds).
   */
  public static final float DIMMED_MOST = 0.06f;

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

  private final Texts texts = Texts.of("drawing");
  private final Bench bench;
  private final LightRoom lights;
  private final Playhead playhead;
  private final Asker asker;
  private final ReadOnlyBooleanWrapper playing = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper dimmed = new ReadOnlyBooleanWrapper();
  private final BooleanProperty looping = new SimpleBooleanProperty(true);
  private final ObjectProperty<Pace> pace = new SimpleObjectProperty<>(Pace.FULL);
  private Optional<Scene> allowed = Optional.empty();
  private boolean clockRuns;
  private long startNanos;
  private int startFrame;
  // Where this clock put the playhead last.
  private int expected;

  public Player(Bench bench, LightRoom lights, Playhead playhead, Asker asker) {
    this.bench = bench;
    this.lights = lights;
    this.playhead = playhead;
    this.asker = asker;
    pace.addListener((of, before, now) -> clockRuns = false);
    bench
        .selectionProperty()
        .addListener(
            (of, before, now) -> {
              if (!before.scene().equals(now.scene())) {
                pause();
              }
            });
    lights.reportProperty().addListener((of, before, now) -> judge());
    bench.projectProperty().addListener((of, before, now) -> judge());
    judge();
  }

  public ReadOnlyBooleanProperty playingProperty() {
    return playing.getReadOnlyProperty();
  }

  /** Whether the preview is held below the light that makes a flash. */
  public ReadOnlyBooleanProperty dimmedProperty() {
    return dimmed.getReadOnlyProperty();
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

  // What was allowed once is allowed until the scene is another.
  private boolean mayPlay(Scene scene) {
    if (allowed.equals(Optional.of(scene))) {
      return true;
    }
    Optional<SceneReport> report = report(scene);
    if (report.isPresent() && passes(report.get())) {
      return true;
    }
    if (report.isEmpty()) {
      // Not measured yet: it begins dimmed and is not asked about.
      return true;
    }
    int answer =
        asker.choose(
            texts.get("flash.title"),
            texts.get("flash.text", worst(report.get())),
            List.of(texts.get("flash.dimmed"), texts.get("flash.full"), texts.get("flash.not")));
    if (answer == 1) {
      allowed = Optional.of(scene);
      dimmed.set(false);
    }
    return answer != 2;
  }

  private void judge() {
    Optional<Scene> scene = bench.scene();
    boolean safe =
        scene.isEmpty()
            || allowed.equals(scene)
            || report(scene.get()).map(Player::passes).orElse(false);
    dimmed.set(!safe);
  }

  private Optional<SceneReport> report(Scene scene) {
    return lights
        .reportProperty()
        .get()
        .filter(r -> r.table().scene().equals(scene))
        .filter(r -> r.table().layout().rig().equals(bench.project().rig()));
  }

  private static boolean passes(SceneReport report) {
    return report.measure().model().caution().passes()
        && report.measure().lights().stream().allMatch(l -> l.caution().passes());
  }

  private String worst(SceneReport report) {
    FlashCaution model = report.measure().model().caution();
    String lamps =
        report.measure().lights().stream()
            .filter(l -> !l.caution().passes())
            .limit(5)
            .map(l -> bench.project().rig().lamp(l.id()).map(lamp -> lamp.title()).orElse(l.id()))
            .collect(java.util.stream.Collectors.joining(", "));
    int flashes =
        Math.max(
            Math.max(model.general().flashes(), model.red().flashes()),
            report.measure().lights().stream()
                .mapToInt(
                    l -> Math.max(l.caution().general().flashes(), l.caution().red().flashes()))
                .max()
                .orElse(0));
    return texts.get("flash.worst", Integer.toString(flashes), lamps.isEmpty() ? "–" : lamps);
  }
}
