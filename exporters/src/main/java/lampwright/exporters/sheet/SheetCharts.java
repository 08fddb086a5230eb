package lampwright.exporters.sheet;

import static lampwright.exporters.sheet.SheetMaker.TEXTS;
import static lampwright.exporters.sheet.SheetMaker.plain;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Tint;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.words.ColourWords;
import lampwright.engine.words.CueWords;
import lampwright.exporters.picture.LightTraces;

/** The strip charts of scenes: what lamps do, as traces and in words. */
final class SheetCharts {
  /** Places of a trace: a third of a millimetre each on paper. */
  static final int PLACES = 400;

  /** Cues of a lamp that are described; of more it is said how many. */
  private static final int CUES = 6;

  /** Colours of a cue that are named. */
  private static final int COLOURS = 4;

  private static final MathContext DIGITS = new MathContext(4);

  private SheetCharts() {}

  static BuildSheet.SceneChart of(Rig rig, FrameTable table) {
    Scene scene = table.scene();
    List<LightTraces.OfLamp> traces = LightTraces.of(table, PLACES);
    List<BuildSheet.Strip> strips = new ArrayList<>();
    List<String> dark = new ArrayList<>();
    for (int i = 0; i < traces.size(); i++) {
      Lamp lamp = rig.lamps().get(i);
      if (traces.get(i).isLit()) {
        strips.add(
            new BuildSheet.Strip(SheetMaker.name(lamp.title()), cues(scene, lamp), traces.get(i)));
      } else {
        dark.add(SheetMaker.name(lamp.title()));
      }
    }
    double seconds = table.frameCount() / table.framesPerSecond();
    return new BuildSheet.SceneChart(
        TEXTS.get(
            "scene.title",
            scene.id(),
            rounded(seconds),
            plain(scene.framesPerSecond().doubleValue()),
            TEXTS.get(scene.loop() ? "scene.loop" : "scene.once")),
        seconds,
        strips,
        dark);
  }

  private static String cues(Scene scene, Lamp lamp) {
    List<Cue> cues =
        scene.tracks().stream()
            .filter(track -> track.lamps().contains(lamp.id()))
            .flatMap(track -> track.cues().stream())
            .toList();
    List<String> words = new ArrayList<>();
    for (Cue cue : cues.subList(0, Math.min(CUES, cues.size()))) {
      boolean whole =
          cues.size() == 1
              && cue.startMs().signum() == 0
              && cue.endMs().compareTo(scene.lengthMs()) >= 0;
      String light = light(cue);
      words.add(
          whole ? light : TEXTS.get("cue.at", seconds(cue.startMs()), seconds(cue.endMs()), light));
    }
    if (cues.size() > CUES) {
      words.add(TEXTS.get("cue.more", Integer.toString(cues.size() - CUES)));
    }
    return String.join("; ", words);
  }

  private static String light(Cue cue) {
    String words = new CueWords().of(cue, 1);
    Pattern pattern = cue.pattern();
    if (pattern instanceof Tint) {
      // Its words are its colours.
      return words;
    }
    List<String> colours =
        new TreeMap<>(pattern.colours())
            .values().stream().map(ColourWords::of).distinct().limit(COLOURS).toList();
    return colours.isEmpty() ? words : words + ", " + String.join(" / ", colours);
  }

  private static String seconds(BigDecimal ms) {
    return rounded(ms.movePointLeft(3).doubleValue());
  }

  private static String rounded(double value) {
    BigDecimal rounded = new BigDecimal(value).round(DIGITS);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
