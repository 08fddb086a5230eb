package lampwright.app.workshop.model.play;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import lampwright.app.picture.Dots;
import lampwright.app.picture.Glow;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.FrameRange;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.drawing.Painting;
import lampwright.app.workshop.model.drawing.PaintingJudge;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.pattern.Steady;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class PlayerTest {
  private static final long SECOND = 1_000_000_000;

  /** Gives one answer to every question. */
  private static final class Answering implements Dialogs {
    private final List<String> asked = new ArrayList<>();
    private int answer = 2;

    @Override
    public int choose(String title, String text, List<String> answers) {
      asked.add(text);
      return answer;
    }

    @Override
    public Optional<Path> fileToOpen(String title, List<String> patterns) {
      return Optional.empty();
    }

    @Override
    public Optional<Path> fileToSave(String title, String suggested, List<String> patterns) {
      return Optional.empty();
    }

    @Override
    public Optional<Path> folder(String title) {
      return Optional.empty();
    }

    @Override
    public void tell(String title, String text) {}
  }

  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final Bench bench = new Bench(Projects4Tests.small());
  private final LightService lights = new LightService(bench, screen::add);
  private final Playhead playhead = new Playhead(bench);
  // All black.
  private final Glow glow = new Glow(32, 32, new int[32 * 32]);
  private final Answering dialogs = new Answering();
  private final PaintingJudge judge = new PaintingJudge(screen::add);
  private final Player player =
      new Player(bench, lights, playhead, dialogs, judge.cautionProperty());

  @AfterEach
  void close() {
    lights.close();
    judge.close();
  }

  @Test
  void frameIsWhatTheClockSaysAndFramesAreDropped() {
    player.play();
    player.tick(5 * SECOND);
    assertThat(playhead.frame()).isZero();
    player.tick(5 * SECOND + SECOND / 50);
    assertThat(playhead.frame()).isEqualTo(1);
    player.tick(5 * SECOND + SECOND / 2 + 1);
    assertThat(playhead.frame()).isEqualTo(25);
    player.tick(5 * SECOND + SECOND + SECOND / 10);
    assertThat(playhead.frame()).isEqualTo(5);
  }

  @Test
  void clockDoesNotDriftOverHours() {
    player.play();
    player.tick(0);
    for (long hour = 1; hour <= 24; hour++) {
      player.tick(hour * 3600 * SECOND + 3 * SECOND / 50);
      assertThat(playhead.frame()).isEqualTo(3);
    }
  }

  @Test
  void slowMotionGoesOnFromTheFrameShown() {
    player.play();
    player.tick(0);
    player.tick(SECOND / 5);
    assertThat(playhead.frame()).isEqualTo(10);
    player.paceProperty().set(Player.Pace.TENTH);
    player.tick(SECOND);
    player.tick(2 * SECOND);
    assertThat(playhead.frame()).isEqualTo(15);
  }

  @Test
  void sceneThatPlaysOnceStopsAtItsEnd() {
    bench.apply(Edit.of("once", p -> Projects.inScene(p, "work", s -> Scene.LOOP.with(s, false))));
    player.loopingProperty().set(false);
    player.play();
    player.tick(0);
    player.tick(7 * SECOND);
    assertThat(playhead.frame()).isEqualTo(49);
    assertThat(player.playingProperty().get()).isFalse();
    player.play();
    assertThat(playhead.frame()).isZero();
  }

  @Test
  void stepsGoRoundALoop() {
    player.step(-1);
    assertThat(playhead.frame()).isEqualTo(49);
    player.step(1);
    assertThat(playhead.frame()).isZero();
    player.toEnd();
    assertThat(playhead.frame()).isEqualTo(49);
  }

  @Test
  void handThatMovesThePlayheadIsFollowed() {
    player.play();
    player.tick(0);
    player.tick(SECOND / 10);
    playhead.go(40);
    player.tick(SECOND / 5);
    player.tick(SECOND / 5 + SECOND / 25);
    assertThat(playhead.frame()).isEqualTo(42);
  }

  @Test
  void sceneIsDimmedUntilItIsMeasuredAndPasses() throws InterruptedException {
    assertThat(player.dimmedProperty().get()).isTrue();
    measure();
    // What the screen paints is not judged yet.
    assertThat(player.dimmedProperty().get()).isTrue();
    paint(1);
    assertThat(player.dimmedProperty().get()).isFalse();
    player.play();
    assertThat(dialogs.asked).isEmpty();
  }

  @Test
  void flashingSceneIsAskedAboutAndBeginsDimmed() throws InterruptedException {
    flashing();
    assertThat(player.dimmedProperty().get()).isTrue();
    player.play();
    assertThat(player.playingProperty().get()).isFalse();
    assertThat(dialogs.asked.get(0))
        .contains("seizures", "5 times per second (roof)", "limit is 3 flashes per second");
    dialogs.answer = 0;
    player.play();
    assertThat(player.playingProperty().get()).isTrue();
    assertThat(player.dimmedProperty().get()).isTrue();
    player.pause();
    dialogs.answer = 1;
    player.play();
    assertThat(player.dimmedProperty().get()).isFalse();
    player.pause();
    player.play();
    assertThat(dialogs.asked).hasSize(3);
  }

  /**
   * A lamp that flickers ten times a second at a fifteenth of its greatest light passes; shown
   * sixteen times as bright, it fails on the screen: asked about and dimmed.
   */
  @Test
  void whatTheScreenPaintsIsJudgedByItself() throws InterruptedException {
    Cue peak = Cue.of(0, 20, new Steady(new Look(new Colour.Drive(1, 1, 1, 1), 1)));
    Cue faint =
        Cue.of(
            100,
            900,
            new Flash(
                new Look(new Colour.Drive(0.06, 0.06, 0.06, 0.06), 1),
                BigDecimal.ZERO,
                BigDecimal.valueOf(60),
                BigDecimal.valueOf(40),
                1,
                BigDecimal.ZERO));
    bench.apply(
        Edit.of(
            "faint",
            p ->
                Projects.inScene(
                    p,
                    "work",
                    s -> Scene.TRACKS.with(s, List.of(Track.of(List.of("roof"), peak, faint))))));
    measure();
    paint(1);
    assertThat(player.dimmedProperty().get()).isFalse();
    paint(16);
    assertThat(player.dimmedProperty().get()).isTrue();
    player.play();
    assertThat(player.playingProperty().get()).isFalse();
    assertThat(dialogs.asked)
        .singleElement()
        .asString()
        .startsWith("Its picture on the screen flashes up to 10 times per second.");
    dialogs.answer = 0;
    player.play();
    assertThat(player.playingProperty().get()).isTrue();
    assertThat(player.dimmedProperty().get()).isTrue();
  }

  @Test
  void whatIsPaintedAnewIsDimmedUntilItIsJudged() throws InterruptedException {
    measure();
    paint(1);
    assertThat(player.dimmedProperty().get()).isFalse();
    judge.painted(painting(2));
    assertThat(player.dimmedProperty().get()).isTrue();
    paint(2);
    assertThat(player.dimmedProperty().get()).isFalse();
  }

  private Painting painting(float exposure) {
    return new Painting(
        lights.lightProperty().get().orElseThrow(),
        glow,
        List.of(new Dots.Dot(0, 0, 16, 16, 6)),
        exposure);
  }

  private void paint(float exposure) throws InterruptedException {
    judge.painted(painting(exposure));
    while (judge.cautionProperty().get().isEmpty()) {
      Runnable next = screen.poll(5, TimeUnit.MINUTES);
      assertThat(next).isNotNull();
      next.run();
    }
  }

  private void flashing() throws InterruptedException {
    bench.apply(
        Edit.of(
            "flash",
            p ->
                Projects.inScene(
                    p,
                    "work",
                    s ->
                        Scene.TRACKS.with(
                            s,
                            List.of(
                                Track.of(
                                    List.of("roof"),
                                    Cue.of(0, 1000, Patterns.fresh("flash", Look.DEFAULT))))))));
    measure();
  }

  private void measure() throws InterruptedException {
    while (lights.measuringProperty().get()) {
      Runnable next = screen.poll(5, TimeUnit.MINUTES);
      assertThat(next).isNotNull();
      next.run();
    }
  }

  /** Frames 10 to 19 are ten: 25 frames on from 10 is 15. */
  @Test
  void rangeIsPlayedAgainAndAgainAndIsGoneWithItsScene() {
    playhead.go(19);
    playhead.endRange();
    playhead.go(10);
    playhead.beginRange();
    assertThat(playhead.range()).contains(new FrameRange(10, 20));
    playhead.go(30);
    Project before = bench.project();
    player.play();
    assertThat(playhead.frame()).isEqualTo(10);
    player.tick(0);
    player.tick(SECOND / 2);
    assertThat(playhead.frame()).isEqualTo(15);
    assertThat(player.playingProperty().get()).isTrue();
    assertThat(bench.project()).isEqualTo(before);
    bench.select(bench.selection().withScene("rest"));
    assertThat(playhead.range()).isEmpty();
  }
}
