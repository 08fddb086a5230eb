package lampwright.app.workshop.model.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.FileChoice;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.files.Turns;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.sound.SoundClip;
import lampwright.app.workshop.sound.SoundFault.Reason;
import lampwright.app.workshop.sound.SoundOutput;
import lampwright.app.workshop.sound.Wav;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The guide sound beside a scene of one second at 50 frames/s that loops. */
class GuideSoundTest {
  private static final long MS = 1_000_000;

  @TempDir Path folder;

  private final List<String> done = new ArrayList<>();
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final Bench bench = new Bench(Projects4Tests.small());
  private final LightService lights = new LightService(bench, screen::add);
  private final Playhead playhead = new Playhead(bench);
  private final Player player =
      new Player(bench, lights, playhead, dialogs, new ReadOnlyObjectWrapper<>(Optional.empty()));
  private final SimpleObjectProperty<Optional<Path>> project =
      new SimpleObjectProperty<>(Optional.empty());
  private final SoundOutput output =
      new SoundOutput() {
        @Override
        public void play(SoundClip clip, double fromMs) {
          done.add("play " + Math.round(fromMs));
        }

        @Override
        public void stop() {
          done.add("stop");
        }

        @Override
        public void close() {}
      };
  private GuideTrack track;
  private long now;

  @BeforeEach
  void make() throws Exception {
    Wav.write(folder.resolve("guide.wav"));
    track = new GuideTrack(bench, project, screen::add);
    GuidePlayer unused =
        new GuidePlayer(
            bench, track, player, output, new ReadOnlyObjectWrapper<>(Optional.empty()), () -> now);
  }

  @AfterEach
  void close() {
    track.close();
    lights.close();
  }

  private void guide(GuideSound sound) throws InterruptedException {
    project.set(Optional.of(folder.resolve("p.lampwright.json")));
    String scene = bench.scene().orElseThrow().id();
    bench.apply(
        Edit.of(
            "set",
            p -> Projects.inScene(p, scene, s -> Scene.GUIDE_SOUND.with(s, Optional.of(sound)))));
    settle();
  }

  private void settle() throws InterruptedException {
    while (track.clip().isEmpty() && track.faultProperty().get().isEmpty()) {
      Runnable work = screen.poll(60, TimeUnit.SECONDS);
      assertThat(work).isNotNull();
      work.run();
    }
  }

  // The clock and with it the frame go on by so many milliseconds, a frame at a time.
  private void run(int ms) {
    for (int i = 0; i < ms; i += 20) {
      now += 20 * MS;
      player.tick(now);
    }
  }

  private void play() {
    player.play();
    player.tick(now);
  }

  @Test
  void soundFollowsPlayPauseAndTheLoop() throws Exception {
    guide(GuideSound.of("guide.wav"));
    playhead.go(10);
    assertThat(done).isEmpty();
    play();
    assertThat(done).containsExactly("play 200");
    run(600);
    assertThat(done).hasSize(1);
    run(300);
    // Round the end of the loop.
    assertThat(done).containsExactly("play 200", "play 0");
    player.pause();
    assertThat(done).containsExactly("play 200", "play 0", "stop");
  }

  @Test
  void soundFollowsAHandOnThePlayhead() throws Exception {
    guide(GuideSound.of("guide.wav"));
    play();
    run(100);
    playhead.go(40);
    assertThat(done).containsExactly("play 0", "play 800");
    run(100);
    assertThat(done).hasSize(2);
  }

  @Test
  void soundBeginsAtItsTimeAndEnds() throws Exception {
    guide(new GuideSound("guide.wav", BigDecimal.valueOf(400)));
    play();
    run(380);
    assertThat(done).isEmpty();
    run(20);
    assertThat(done).containsExactly("play 0");
    done.clear();
    guide(new GuideSound("guide.wav", BigDecimal.valueOf(-700)));
    assertThat(done).first().isEqualTo("stop");
    playhead.go(0);
    done.clear();
    run(280);
    assertThat(done).isEmpty();
    run(60);
    assertThat(done).containsExactly("stop");
  }

  @Test
  void soundIsSilentAtOtherSpeedsAndWhileMuted() throws Exception {
    guide(GuideSound.of("guide.wav"));
    player.paceProperty().set(Player.Pace.HALF);
    play();
    run(100);
    assertThat(done).isEmpty();
    player.paceProperty().set(Player.Pace.FULL);
    assertThat(done).hasSize(1);
    track.mutedProperty().set(true);
    assertThat(done).last().isEqualTo("stop");
    run(100);
    assertThat(done).hasSize(2);
    track.mutedProperty().set(false);
    assertThat(done).hasSize(3);
  }

  @Test
  void whatIsWrongWithAFileIsKnownAndTheLightPlays() throws Exception {
    Files.writeString(folder.resolve("bad.wav"), "no sound");
    guide(GuideSound.of("bad.wav"));
    assertThat(track.faultProperty().get()).contains(Reason.NO_SOUND);
    play();
    run(100);
    assertThat(playhead.frame()).isEqualTo(5);
    assertThat(done).isEmpty();
    guide(GuideSound.of("gone.wav"));
    assertThat(track.faultProperty().get()).contains(Reason.MISSING);
    project.set(Optional.empty());
    assertThat(track.faultProperty().get()).contains(Reason.MISSING);
  }

  @Test
  void fileFromElsewhereIsCopiedBesideTheProjectAndUndoTakesItOut(@TempDir Path elsewhere)
      throws Exception {
    Turns disk = new Turns();
    GuideCommands commands =
        new GuideCommands(bench, track, new FileChoice(dialogs, project::get, disk, Runnable::run));
    commands.choose();
    assertThat(dialogs.told).singleElement().asString().contains("Save the project first");
    project.set(Optional.of(folder.resolve("p.lampwright.json")));
    dialogs.files.add(Wav.write(elsewhere.resolve("horn.wav")));
    dialogs.answers.add("Copy");
    commands.choose();
    disk.drain();
    assertThat(folder.resolve("horn.wav")).exists();
    assertThat(track.sound()).contains(GuideSound.of("horn.wav"));
    commands.startAt(BigDecimal.TEN, new Object());
    dialogs.files.add(folder.resolve("guide.wav"));
    commands.choose();
    disk.drain();
    assertThat(track.sound()).contains(new GuideSound("guide.wav", BigDecimal.TEN));
    commands.reset();
    assertThat(track.sound()).contains(GuideSound.of("guide.wav"));
    dialogs.files.add(Files.writeString(elsewhere.resolve("bad.wav"), "no sound"));
    commands.choose();
    disk.drain();
    assertThat(dialogs.told).last().asString().contains("bad.wav cannot be played");
    commands.remove();
    assertThat(track.sound()).isEmpty();
    bench.undo();
    assertThat(track.sound()).contains(GuideSound.of("guide.wav"));
  }
}
