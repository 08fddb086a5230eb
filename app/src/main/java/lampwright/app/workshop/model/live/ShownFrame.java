package lampwright.app.workshop.model.live;

import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.LiveFrame;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.model.situation.Transmitter;
import lampwright.engine.render.FrameStore;
import lampwright.engine.rig.Rig;

/**
 * The bytes of what the drawing shows: the frame of the scene at the playhead, or what the
 * situations make of sticks and drives. For the screen's thread.
 */
public final class ShownFrame {
  private record MaskOf(Rig rig, LampSigns signs, Optional<ImmutableSet<String>> lamps) {}

  private final Bench bench;
  private final LightService lights;
  private final DrawingSheet sheet;
  private final Player player;
  private final Transmitter transmitter;
  private Optional<MaskOf> maskOf = Optional.empty();
  private Optional<LampMask> mask = Optional.empty();

  public ShownFrame(
      Bench bench,
      LightService lights,
      DrawingSheet sheet,
      Player player,
      Transmitter transmitter) {
    this.bench = bench;
    this.lights = lights;
    this.sheet = sheet;
    this.player = player;
    this.transmitter = transmitter;
  }

  /**
   * Watches it.
   *
   * @param changed is told of a frame that is another by an edit, a selection, or more light
   * @param moved is told of another instant
   */
  void watch(Runnable changed, Runnable moved) {
    bench.watch(BenchState::frame, (before, now) -> moved.run());
    bench.watch(BenchState::selection, (before, now) -> changed.run());
    lights.lightProperty().addListener((of, before, now) -> changed.run());
    lights.progressProperty().addListener((of, before, now) -> changed.run());
    sheet.signsProperty().addListener((of, before, now) -> changed.run());
    sheet.liveProperty().addListener((of, before, now) -> moved.run());
    player.playingProperty().addListener((of, before, now) -> moved.run());
    player.lampsClearedProperty().addListener((of, before, now) -> changed.run());
    transmitter.fullProperty().addListener((of, before, now) -> changed.run());
  }

  /** Whether time goes on by itself. */
  boolean plays() {
    return live().isPresent()
        ? transmitter.playingProperty().get()
        : player.playingProperty().get();
  }

  /** Whether it passed the flash check, or the builder agreed to its full light. */
  boolean cleared() {
    return live().isPresent()
        ? transmitter.fullProperty().get()
        : player.lampsClearedProperty().get();
  }

  private Optional<LiveFrame> live() {
    return sheet.liveProperty().get();
  }

  /**
   * Its bytes; none while they are not rendered.
   *
   * @param selectedOnly whether all lamps but the selected ones are dark
   */
  Optional<byte[]> now(boolean selectedOnly) {
    Optional<byte[]> frame = live().map(LiveFrame::bytes).or(this::ofScene);
    frame.ifPresent(bytes -> darken(bytes, selectedOnly));
    return frame;
  }

  private Optional<byte[]> ofScene() {
    Optional<SceneLight> light = lights.lightProperty().get();
    if (light.isEmpty()) {
      return Optional.empty();
    }
    FrameStore frames = light.get().frames();
    byte[] bytes = new byte[frames.table().layout().bytes()];
    int at = Math.min(bench.state().frame(), frames.frameCount() - 1);
    return frames.read(at, bytes) ? Optional.of(bytes) : Optional.empty();
  }

  private void darken(byte[] bytes, boolean selectedOnly) {
    LampSigns signs = sheet.signs();
    if (!selectedOnly && signs.muted().isEmpty() && signs.solo().isEmpty()) {
      return;
    }
    Rig rig = bench.project().rig();
    ImmutableSet<String> selected = bench.selection().lamps();
    MaskOf wanted = new MaskOf(rig, signs, selectedOnly ? Optional.of(selected) : Optional.empty());
    if (!maskOf.equals(Optional.of(wanted))) {
      maskOf = Optional.of(wanted);
      mask =
          Optional.of(
              LampMask.of(
                  rig,
                  lamp -> signs.shows(lamp) && (!selectedOnly || selected.contains(lamp)),
                  !selectedOnly && signs.solo().isEmpty()));
    }
    // Of a rig before an edit until it is rendered anew.
    mask.filter(m -> m.sent().size() == bytes.length).ifPresent(m -> m.apply(bytes));
  }
}
