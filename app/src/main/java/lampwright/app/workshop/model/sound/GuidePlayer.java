package lampwright.app.workshop.model.sound;

import java.util.Optional;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.sound.SoundClip;
import lampwright.app.workshop.sound.SoundFault.Reason;
import lampwright.app.workshop.sound.SoundOutput;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Scene;

/**
 * Plays the guide sound in step with the frames shown: it begins anew wherever they jump, as at the
 * end of a loop or by a hand on the playhead. At other speeds than the scene's own it is silent.
 */
public final class GuidePlayer implements AutoCloseable {
  /** What is out of step by more than this and a frame has jumped, in milliseconds. */
  private static final double JUMP_MS = 80;

  private final Bench bench;
  private final GuideTrack track;
  private final Player player;
  private final SoundOutput output;
  private final LongSupplier nanos;
  private final ReadOnlyObjectProperty<Optional<Reason>> trouble;
  private boolean sounds;
  private double startMs;
  private long startNanos;

  /**
   * @param trouble what the output can't do
   * @param nanos a clock that only goes forward
   */
  public GuidePlayer(
      Bench bench,
      GuideTrack track,
      Player player,
      SoundOutput output,
      ReadOnlyObjectProperty<Optional<Reason>> trouble,
      LongSupplier nanos) {
    this.bench = bench;
    this.track = track;
    this.player = player;
    this.output = output;
    this.trouble = trouble;
    this.nanos = nanos;
    bench.watch(BenchState::frame, (before, now) -> follow());
    bench.watch(state -> state.scene().flatMap(Scene::guideSound), (before, now) -> again());
    track.clipProperty().addListener((of, before, now) -> again());
    track.mutedProperty().addListener((of, before, now) -> again());
    player.playingProperty().addListener((of, before, now) -> again());
    player.paceProperty().addListener((of, before, now) -> again());
  }

  /** Why nothing is heard though it is played. */
  public ReadOnlyObjectProperty<Optional<Reason>> troubleProperty() {
    return trouble;
  }

  @Override
  public void close() {
    output.close();
  }

  private void again() {
    silence();
    follow();
  }

  private void silence() {
    if (sounds) {
      sounds = false;
      output.stop();
    }
  }

  private void follow() {
    Optional<SoundClip> clip = audible();
    if (clip.isEmpty()) {
      silence();
      return;
    }
    Scene scene = bench.scene().orElseThrow();
    GuideSound sound = track.sound().orElseThrow();
    double wanted =
        CueEdits.frameMs(scene, bench.state().frame()).subtract(sound.startMs()).doubleValue();
    if (wanted < 0 || wanted >= clip.get().lengthMs()) {
      silence();
      return;
    }
    long now = nanos.getAsLong();
    double heard = startMs + (now - startNanos) / 1e6;
    double reach = JUMP_MS + 1000 / scene.framesPerSecond().doubleValue();
    if (!sounds || Math.abs(heard - wanted) > reach) {
      sounds = true;
      startMs = wanted;
      startNanos = now;
      output.play(clip.get(), wanted);
    }
  }

  private Optional<SoundClip> audible() {
    boolean plays =
        player.playingProperty().get()
            && player.paceProperty().get() == Player.Pace.FULL
            && !track.mutedProperty().get();
    return plays && track.sound().isPresent() ? track.clip() : Optional.empty();
  }
}
