package lampwright.app.workshop.model.shelf;

import java.math.BigDecimal;
import java.util.List;
import lampwright.app.picture.Glow;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.model.ribbon.Strip;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.ScreenFlashes;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.render.FrameStore;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import lampwright.exporters.picture.ColourRow;
import lampwright.exporters.picture.Srgb8;

/**
 * A pattern on eight RGBW pixels over four seconds, as the renderer gives it.
 *
 * @param stripes a row for each pixel, a colour for each frame
 * @param flashes how often it flashes on the screen where it moves
 */
public record ShelfLight(List<ColourRow> stripes, FlashCaution flashes) {
  public static final int PIXELS = 8;
  public static final int LENGTH_MS = 4000;
  public static final int FRAMES_PER_SECOND = 50;
  public static final int FRAMES = LENGTH_MS * FRAMES_PER_SECOND / 1000;

  private static final Rig RIG =
      Rig.of(
          List.of(new Chain("shelf", BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), PIXELS)),
          List.of(),
          List.of(Lamp.ofPixels("shelf", new PixelRun("shelf", 0, PIXELS))));

  public ShelfLight {
    stripes = List.copyOf(stripes);
  }

  /**
   * Renders a pattern.
   *
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public static ShelfLight of(Pattern pattern) {
    BigDecimal length = BigDecimal.valueOf(LENGTH_MS);
    Cue cue =
        new Cue(BigDecimal.ZERO, length, BigDecimal.ZERO, BigDecimal.ZERO, Blend.COVER, pattern);
    Scene scene =
        new Scene(
            "shelf",
            length,
            BigDecimal.valueOf(FRAMES_PER_SECOND),
            true,
            Dither.OFF,
            List.of(new Track(List.of("shelf"), Span.EACH, List.of(cue))));
    FrameStore store = new FrameStore(FrameTable.of(RIG, scene));
    store.render(() -> {});
    List<ColourRow> stripes =
        Strip.paint(
            SceneLight.of(store),
            new TimeAxis(0, 1000.0 / FRAMES_PER_SECOND),
            FRAMES,
            List.of(List.of(0)),
            new boolean[] {false})[0]
            .stripes();
    return new ShelfLight(stripes, flashes(stripes));
  }

  /** The colour of a pixel at a frame, where it moves: dimmed if it flashes more than the limit. */
  public int moving(int pixel, int frame) {
    int argb = stripes.get(pixel).argb(frame);
    if (flashes.passes()) {
      return argb;
    }
    float r = Srgb8.linear(argb >> 16 & 0xFF);
    float g = Srgb8.linear(argb >> 8 & 0xFF);
    float b = Srgb8.linear(argb & 0xFF);
    float most = Math.max(r, Math.max(g, b));
    float scale = most > Glow.DIMMED_MOST ? Glow.DIMMED_MOST / most : 1;
    return Srgb8.argb(r * scale, g * scale, b * scale);
  }

  // Of each pixel, and of all of them together.
  private static FlashCaution flashes(List<ColourRow> stripes) {
    FlashCaution worst = FlashCaution.NONE;
    for (ColourRow stripe : stripes) {
      worst = worst.orWorse(flashesOf(List.of(stripe)));
    }
    return worst.orWorse(flashesOf(stripes));
  }

  private static FlashCaution flashesOf(List<ColourRow> stripes) {
    ScreenFlashes counter = new ScreenFlashes(FRAMES_PER_SECOND, FRAMES, true);
    for (int round = 0; round < 2; round++) {
      if (round > 0) {
        counter.nextRound();
      }
      for (int frame = 0; frame < FRAMES; frame++) {
        double r = 0;
        double g = 0;
        double b = 0;
        for (ColourRow stripe : stripes) {
          int argb = stripe.argb(frame);
          r += Srgb8.linear(argb >> 16 & 0xFF) / stripes.size();
          g += Srgb8.linear(argb >> 8 & 0xFF) / stripes.size();
          b += Srgb8.linear(argb & 0xFF) / stripes.size();
        }
        counter.frame(frame, r, g, b);
      }
    }
    return counter.found();
  }
}
