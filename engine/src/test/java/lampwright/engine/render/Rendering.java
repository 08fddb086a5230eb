package lampwright.engine.render;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** Small rigs and scenes for the tests of the renderer. */
final class Rendering {
  private Rendering() {}

  static Chain chain(String id, String type, int pixels) {
    return new Chain(id, BuiltInPixelTypes.find(type).orElseThrow(), pixels);
  }

  static Lamp lamp(String id, String chain, int from, int count) {
    return Lamp.ofPixels(id, new PixelRun(chain, from, count));
  }

  /** A rig with one output and one lamp on it, with a linear curve: the light of a cue as it is. */
  static Rig oneOutput(java.util.Optional<Feel> feel, double brightnessCap) {
    Lamp lamp =
        new Lamp(
            "spot",
            "",
            "",
            LampFunction.OTHER,
            new Fitting.Output("one"),
            java.util.Optional.empty(),
            java.util.List.of(),
            feel);
    return rig(new Curve.Linear(), brightnessCap, List.of(), List.of(DriverOutput.of("one")), lamp);
  }

  static Rig rig(
      Curve curve,
      double brightnessCap,
      List<Chain> chains,
      List<DriverOutput> outputs,
      Lamp... lamps) {
    return new Rig(
        5,
        2000,
        5,
        curve,
        ColourMatching.DIRECT,
        false,
        brightnessCap,
        CurrentCap.OFF,
        chains,
        outputs,
        List.of(lamps));
  }

  static Scene scene(String lengthMs, String framesPerSecond, boolean loop, Track... tracks) {
    return scene(lengthMs, framesPerSecond, loop, Dither.OFF, tracks);
  }

  static Scene scene(
      String lengthMs, String framesPerSecond, boolean loop, Dither dither, Track... tracks) {
    return new Scene(
        "test",
        new BigDecimal(lengthMs),
        new BigDecimal(framesPerSecond),
        loop,
        dither,
        List.of(tracks));
  }

  static Cue cue(
      String startMs,
      String lengthMs,
      String fadeInMs,
      String fadeOutMs,
      Blend blend,
      Pattern pattern) {
    return new Cue(
        new BigDecimal(startMs),
        new BigDecimal(lengthMs),
        new BigDecimal(fadeInMs),
        new BigDecimal(fadeOutMs),
        blend,
        pattern);
  }

  /** Every frame of a table, as numbers 0 to 255. */
  static List<List<Integer>> frames(FrameTable table) {
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    List<List<Integer>> frames = new ArrayList<>();
    while (cursor.hasNext()) {
      cursor.next(frame);
      frames.add(unsigned(frame));
    }
    return frames;
  }

  static List<Integer> unsigned(byte[] frame) {
    List<Integer> bytes = new ArrayList<>();
    for (byte b : frame) {
      bytes.add(b & 0xFF);
    }
    return bytes;
  }

  /** The first byte of every frame. */
  static List<Integer> column(FrameTable table) {
    return frames(table).stream().map(frame -> frame.get(0)).toList();
  }
}
