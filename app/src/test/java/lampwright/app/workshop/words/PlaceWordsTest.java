package lampwright.app.workshop.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.app.workshop.Projects4Tests;
import lampwright.engine.check.Fault;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.Test;

class PlaceWordsTest {
  private final Project project = Projects4Tests.sample("recovery-tractor");
  private final Scene working = project.scene("working").orElseThrow();

  private static String plain(String text) {
    return text.replace('\u00a0', ' ');
  }

  private String refusal(String path) {
    return plain(
        PlaceWords.of(
            project,
            new InvalidModelException(
                "project", List.of(new Fault(path, "-20", "must be at least 0")))));
  }

  @Test
  void lampAndItsTimeAreNamed() {
    Finding finding =
        Finding.of(Code.FLASH_RATE, new Subject.OneLamp("beacon-left", "Roof beacon, left"))
            .with("rate", Figure.words("300 flashes/min"))
            .with("verdict", Figure.words("limit"))
            .in(working, 60)
            .make();
    assertThat(plain(PlaceWords.of(project, finding)))
        .isEqualTo("Roof beacon, left, at 1.2 s of scene working");
  }

  @Test
  void cueIsNamedByItsLampsAndItsStart() {
    Finding finding =
        Finding.of(Code.CUE_CUT, new Subject.OneCue("working", 0, 0, "x"))
            .with("end", Figure.words("5 s"))
            .with("limit", Figure.words("4 s"))
            .at("scenes[0].tracks[0].cues[0]")
            .make();
    assertThat(plain(PlaceWords.of(project, finding)))
        .isEqualTo("Roof beacon, left, cue at 0 s, scene working");
  }

  @Test
  void cueThatIsGoneIsNamedByTheLampsOfTheFinding() {
    Finding finding =
        Finding.of(Code.CUE_CUT, new Subject.OneCue("working", 99, 0, "Old lamp"))
            .with("end", Figure.words("5 s"))
            .with("limit", Figure.words("4 s"))
            .make();
    assertThat(PlaceWords.of(project, finding)).isEqualTo("Old lamp, scene working");
  }

  @Test
  void outputIsNamedByItsLamp() {
    assertThat(refusal("rig.outputs[0].milliamps"))
        .isEqualTo(
            "Headlamp, left (driver output head-left), full-drive current: -20: must be at least 0");
  }

  @Test
  void refusalsNameScenesLampsAndCuesAndNoPaths() {
    assertThat(refusal("scenes[0].tracks[0].cues[0].lengthMs"))
        .isEqualTo(
            "scene working, Roof beacon, left, cue at 0 s, duration: -20: must be at least 0");
    assertThat(refusal("lengthMs")).isEqualTo("duration: -20: must be at least 0");
    assertThat(refusal("scenes[99].lengthMs")).startsWith("new scene, duration: ");
    for (String path :
        List.of(
            "rig.chains[0].pixels",
            "rig.chains[9].pixels",
            "lamps[0].pixels[0].count",
            "rig.lamps[2].name",
            "scenes[0].tracks[1].lamps[0]",
            "pixelTypes[0].id",
            "presets[3].name",
            "pictures[0].view")) {
      assertThat(refusal(path)).doesNotContain("[").doesNotContain("]").endsWith("at least 0");
    }
  }

  @Test
  void lineHasPlaceLimitAndRemedyAndNoCode() {
    Finding finding =
        Finding.of(Code.SUPPLY_CURRENT, new Subject.OneScene("working"))
            .with("current", Figure.milliamps(1900))
            .with("limit", Figure.milliamps(1500))
            .with("cap", Figure.of(0.8, 2, lampwright.engine.review.Unit.NONE))
            .in(working, 50)
            .make();
    assertThat(plain(PlaceWords.line(project, finding)))
        .startsWith("scene working, at 1 s: draws 1900 mA; limit 1500 mA: ")
        .doesNotContain("[supply-current]");
  }
}
