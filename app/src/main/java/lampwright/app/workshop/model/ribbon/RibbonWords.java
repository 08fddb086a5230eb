package lampwright.app.workshop.model.ribbon;

import java.util.List;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.words.CueWords;

/** What is in the ribbons, in words. */
public final class RibbonWords {
  private final Texts texts = Texts.of("ribbons");
  private final CueWords cueWords = new CueWords();
  private final Bench bench;

  public RibbonWords(Bench bench) {
    this.bench = bench;
  }

  /** A cue of the scene on the bench, for people who hear the screen. */
  public String cue(CueRef ref) {
    Scene scene = bench.scene().orElseThrow();
    Cue cue = ref.in(scene).orElseThrow();
    List<String> lamps =
        scene.tracks().get(ref.track()).lamps().stream()
            .map(id -> bench.project().rig().lamp(id).map(Titles::of).orElse(id))
            .toList();
    return texts.get(
        "cue.words",
        String.join(", ", lamps),
        Titles.ofKind(cue.pattern().kind()),
        TimeAxis.label(cue.startMs().doubleValue()),
        TimeAxis.label(cue.endMs().doubleValue()));
  }

  /** What a cue does, in a few words. */
  public String summary(Cue cue) {
    return cueWords.of(cue, 1);
  }

  /** How many pixels and LEDs a group has. */
  public String count(RibbonLayout.Heading heading) {
    return TitleDrawing.count(heading.lamps());
  }

  /** Where a lamp is in the rig. */
  public String where(Lamp lamp) {
    return TitleDrawing.where(lamp);
  }
}
