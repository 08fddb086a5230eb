package lampwright.app.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Tint;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** A minute of 1,000 RGBW pixels at 50 frames/s; render_plain.c renders the same. */
final class BenchScenes {
  static final int PIXELS = 1000;
  static final int FRAMES = 3000;
  static final int LENGTH_MS = 60_000;

  /** What moves from 3,000 to 6,500 K in every scene of overlapping tracks. */
  static final Tint TINT = new Tint(Look.DEFAULT, 3000, OptionalDouble.of(6500));

  private static final BigDecimal NONE = BigDecimal.ZERO;
  private static final Look AMBER = new Look(new Colour.Srgb(255, 160, 0), 0.9);

  private BenchScenes() {}

  /** Five overlapping tracks; the fourth covers all below it but for a second at either end. */
  static FrameTable hiding(ColourMatching matching) {
    return FrameTable.of(oneLamp(matching), overlapping(Blend.COVER));
  }

  /** Five overlapping tracks, of which none hides another. */
  static FrameTable open() {
    return FrameTable.of(oneLamp(ColourMatching.DIRECT), overlapping(Blend.BRIGHTER));
  }

  /** A thousand lamps of one pixel, each blinking at a rate of its own. */
  static FrameTable lamps() {
    List<Lamp> lamps = new ArrayList<>();
    List<Track> tracks = new ArrayList<>();
    for (int k = 0; k < PIXELS; k++) {
      String id = "lamp-" + k;
      lamps.add(Lamp.ofPixels(id, new PixelRun("c", k, 1)));
      BigDecimal perMinute = BigDecimal.valueOf(600 + k, 1);
      Indicator blink = new Indicator(AMBER, NONE, perMinute, Indicator.DEFAULT_ON_SHARE);
      tracks.add(Track.of(List.of(id), Cue.of(0, LENGTH_MS, blink)));
    }
    return FrameTable.of(rig(ColourMatching.DIRECT, lamps), scene(tracks));
  }

  private static Rig oneLamp(ColourMatching matching) {
    return rig(matching, List.of(Lamp.ofPixels("all", new PixelRun("c", 0, PIXELS))));
  }

  private static Scene overlapping(Blend chase) {
    return scene(
        List.of(
            track(Blend.COVER, TINT),
            track(
                Blend.BRIGHTER,
                new ColourCycle(Look.DEFAULT, NONE, BigDecimal.valueOf(4000), 3, 1, false)),
            track(
                Blend.ADD,
                new RotatingBeacon(AMBER, NONE, BigDecimal.valueOf(118), 90, true, List.of())),
            track(chase, new Chase(AMBER, NONE, BigDecimal.valueOf(70), 5, 20, true)),
            track(Blend.SCALE, new Flicker(Look.DEFAULT, 3, 0.3, BigDecimal.valueOf(8)))));
  }

  private static Track track(Blend blend, Pattern pattern) {
    BigDecimal second = BigDecimal.valueOf(1000);
    Cue cue = new Cue(NONE, BigDecimal.valueOf(LENGTH_MS), second, second, blend, pattern);
    return Track.of(List.of("all"), cue);
  }

  private static Scene scene(List<Track> tracks) {
    return new Scene(
        "minute", BigDecimal.valueOf(LENGTH_MS), BigDecimal.valueOf(50), true, Dither.OFF, tracks);
  }

  private static Rig rig(ColourMatching matching, List<Lamp> lamps) {
    Chain chain = new Chain("c", BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), PIXELS);
    return new Rig(
        5,
        2000,
        5,
        Curve.DEFAULT,
        matching,
        false,
        0.8,
        CurrentCap.OFF,
        List.of(chain),
        List.of(),
        lamps);
  }
}
