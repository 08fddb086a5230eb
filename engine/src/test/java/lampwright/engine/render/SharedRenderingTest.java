package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Look;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;

/** Those who want the frames of a scene share one rendering, which large scenes split in two. */
class SharedRenderingTest {
  private final Rig rig =
      Rig.of(
          List.of(Rendering.chain("c", "sk6812-rgbw", 400)),
          List.of(),
          List.of(Rendering.lamp("l", "c", 0, 400)));
  private final Scene scene =
      Rendering.scene(
          "8000",
          "50",
          true,
          Track.of(
              List.of("l"),
              Rendering.cue(
                  "0",
                  "8000",
                  "900",
                  "300",
                  Blend.COVER,
                  new ColourCycle(
                      Look.DEFAULT, BigDecimal.ZERO, new BigDecimal("1700"), 2.5, 0.9, false)),
              Rendering.cue(
                  "1000",
                  "5000.5",
                  "0",
                  "0",
                  Blend.SCALE,
                  new Flicker(
                      new Look(new Colour.Srgb(255, 90, 0), 0.9), 7, 0.4, new BigDecimal("9")))));

  @Test
  void sceneInUseHasOneTable() {
    FrameTable table = FrameTable.of(rig, scene);
    assertThat(FrameTable.of(rig, scene)).isSameAs(table);
    Rig other = Rig.of(rig.chains(), List.of(), rig.lamps());
    assertThat(FrameTable.of(other, scene)).isNotSameAs(table);
    assertThat(FrameTable.of(other, scene).layout().rig()).isSameAs(other);
  }

  @Test
  void framesOfAWholeRunAreKept() {
    FrameTable table = FrameTable.of(rig, scene);
    FrameCursor half = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    half.next(frame);
    half.seek(200);
    while (half.hasNext()) {
      half.next(frame);
    }
    assertThat(table.isKept()).isFalse();
    List<List<Integer>> rendered = Rendering.frames(table);
    assertThat(table.isKept()).isTrue();
    assertThat(Rendering.frames(table)).isEqualTo(rendered);
    FrameCursor again = table.cursor();
    again.seek(123);
    again.next(frame);
    assertThat(Rendering.unsigned(frame)).isEqualTo(rendered.get(123));
  }

  /** Two threads against one, and frames out of order. */
  @Test
  void framesOfTwoThreadsAreThoseOfOne() {
    FrameTable table = FrameTable.of(rig, scene);
    List<List<Integer>> one = new ArrayList<>();
    byte[] frame = new byte[table.layout().bytes()];
    for (FrameCursor cursor = table.passingCursor(); cursor.hasNext(); ) {
      cursor.next(frame);
      one.add(Rendering.unsigned(frame));
    }
    FrameSource pair =
        new PairRenderer(
            new SceneRenderer(table.layout(), scene, 1, SceneRenderer.Way.QUICK),
            new SceneRenderer(table.layout(), scene, 1, SceneRenderer.Way.QUICK),
            table.frameCount());
    for (int run = 0; run < 2; run++) {
      for (int i = 0; i < table.frameCount(); i++) {
        pair.render(i, frame);
        assertThat(Rendering.unsigned(frame)).isEqualTo(one.get(i));
      }
      for (int i : new int[] {399, 0, 17, 18, 19, 20, 300}) {
        pair.rewind();
        pair.render(i, frame);
        assertThat(Rendering.unsigned(frame)).isEqualTo(one.get(i));
      }
      pair.rewind();
    }
  }

  @Test
  void renderingOnTwoThreadsEndsWhenInterrupted() {
    FrameTable table = FrameTable.of(rig, scene);
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    for (int i = 0; i < 20; i++) {
      cursor.next(frame);
    }
    Thread.currentThread().interrupt();
    try {
      org.junit.jupiter.api.Assertions.assertThrows(
          java.util.concurrent.CancellationException.class,
          () -> {
            while (cursor.hasNext()) {
              cursor.next(frame);
            }
          });
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
  }
}
