package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Steady;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(600)
class FrameStoreTest {
  private final Rig rig = Rendering.oneOutput(Optional.empty(), 1);
  private final BlockingQueue<String> heard = new LinkedBlockingQueue<>();

  // 300 frames: more than one piece of the store.
  private static Scene steady(double level) {
    Pattern pattern = new Steady(new Look(new Colour.Drive(level, 0, 0, 0), 1));
    return Rendering.scene(
        "3000", "100", true, Track.of(List.of("spot"), Cue.of(0, 1500, pattern)));
  }

  private FrameStore store() {
    return new FrameStore(FrameTable.of(rig, steady(1)));
  }

  /** The byte of drive 1 is 255 and that of no cue is 0: DESIGN.md, section 5. */
  @Test
  void framesAreThoseOfTheScene() {
    FrameStore store = store();
    assertThat(store.frameCount()).isEqualTo(300);
    assertThat(store.complete()).isFalse();
    List<Integer> rendered = new ArrayList<>();
    store.render(() -> rendered.add(store.rendered()));
    assertThat(rendered).containsExactly(256, 300);
    assertThat(store.complete()).isTrue();
    List<Integer> duties = new ArrayList<>();
    store.forEach((index, bytes) -> duties.add(index < 150 ? bytes[0] & 0xFF : -bytes[0]));
    assertThat(duties.subList(0, 150)).containsOnly(255);
    assertThat(duties.subList(150, 300)).containsOnly(0);
  }

  @Test
  void frameCanBeReadBeforeItsTurn() {
    FrameStore store = store();
    byte[] frame = new byte[1];
    assertThat(store.has(149)).isFalse();
    assertThat(store.read(149, frame)).isTrue();
    assertThat(frame[0] & 0xFF).isEqualTo(255);
    assertThatThrownBy(() -> store.read(300, frame)).isInstanceOf(IndexOutOfBoundsException.class);
  }

  @Test
  void renderingEndsWhenItsThreadIsInterrupted() {
    FrameStore store = store();
    Thread.currentThread().interrupt();
    try {
      assertThatThrownBy(() -> store.render(() -> {})).isInstanceOf(CancellationException.class);
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
    assertThat(store.rendered()).isZero();
  }

  @Test
  void backgroundRendererTellsOfTheFramesAndTheEnd() throws InterruptedException {
    try (var renderer =
        new BackgroundRenderer<>(Runnable::run, FrameStore::frameCount, listener())) {
      renderer.request(rig, steady(1));
      assertThat(next()).isEqualTo("progressed 300");
      assertThat(next()).isEqualTo("progressed 300");
      assertThat(next()).isEqualTo("completed 300");
    }
  }

  @Test
  void backgroundRendererTellsOfTheLatestSceneAlone() throws InterruptedException {
    BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
    try (var renderer = new BackgroundRenderer<>(screen::add, FrameStore::frameCount, listener())) {
      renderer.request(rig, steady(1));
      Runnable first = screen.poll(5, TimeUnit.MINUTES);
      renderer.request(rig, Rendering.scene("20", "100", true));
      assertThat(first).isNotNull();
      first.run();
      assertThat(heard).isEmpty();
      while (!heard.contains("completed 2")) {
        Runnable more = screen.poll(5, TimeUnit.MINUTES);
        assertThat(more).isNotNull();
        more.run();
      }
      assertThat(heard).containsExactly("progressed 2", "completed 2");
    }
  }

  private String next() throws InterruptedException {
    return heard.poll(5, TimeUnit.MINUTES);
  }

  private BackgroundRenderer.Listener<Integer> listener() {
    return new BackgroundRenderer.Listener<>() {
      @Override
      public void progressed(Integer frames) {
        heard.add("progressed " + frames);
      }

      @Override
      public void completed(Integer frames) {
        heard.add("completed " + frames);
      }
    };
  }
}
