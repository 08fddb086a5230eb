package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.Projects4Tests;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;

class PixelNamesTest {
  private static final Chain CHAIN =
      new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 6);
  private static final Chain OTHER =
      new Chain("d", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 2);

  private static Project project(Lamp... lamps) {
    Rig rig = Rig.of(List.of(CHAIN, OTHER), List.of(), List.of(lamps));
    return Project.of("p", rig, Projects.emptyScene("s", 1000));
  }

  private static Lamp lamp(String id, int from, int count) {
    return Lamp.ofPixels(id, new PixelRun("c", from, count));
  }

  private static PixelNames names(String... lamps) {
    PixelNames names = PixelNames.none("c");
    for (int i = 0; i < lamps.length; i++) {
      names = names.with(i, Optional.of(lamps[i]).filter(lamp -> !lamp.isEmpty()));
    }
    return names;
  }

  private static List<PixelRun> runs(Project project, String lamp) {
    return ((Fitting.Pixels) project.rig().lamp(lamp).orElseThrow().fitting()).runs();
  }

  @Test
  void lampsGetTheirPixelsInDataOrder() {
    Project before = project(lamp("a", 0, 3), lamp("b", 3, 2));
    Project named = names("b", "a", "a", "b", "a", "").apply(before);
    assertThat(runs(named, "a")).containsExactly(new PixelRun("c", 1, 2), new PixelRun("c", 4, 1));
    assertThat(runs(named, "b")).containsExactly(new PixelRun("c", 0, 1), new PixelRun("c", 3, 1));
    assertThat(named.rig().lamps()).extracting(Lamp::id).containsExactly("a", "b");
  }

  @Test
  void newLampsComeLast() {
    Project named = names("new-1", "a", "new-2", "new-1").apply(project(lamp("a", 0, 1)));
    assertThat(named.rig().lamps()).extracting(Lamp::id).containsExactly("a", "new-1", "new-2");
    assertThat(runs(named, "new-1"))
        .containsExactly(new PixelRun("c", 0, 1), new PixelRun("c", 3, 1));
  }

  @Test
  void pixelsThatWereNotLookedAtStayWithTheirLamps() {
    Project before = project(lamp("a", 0, 4), lamp("b", 4, 2));
    Project named = names("b").apply(before);
    assertThat(runs(named, "a")).containsExactly(new PixelRun("c", 1, 3));
    assertThat(runs(named, "b")).containsExactly(new PixelRun("c", 0, 1), new PixelRun("c", 4, 2));
  }

  @Test
  void whatIsAsItWasStaysAsItWasInItsOwnOrder() {
    Lamp turned =
        Lamp.ofPixels(
            "a", new PixelRun("c", 2, 1), new PixelRun("c", 1, 1), new PixelRun("c", 0, 1));
    Project before = project(turned, lamp("b", 3, 3));
    assertThat(names("a", "a", "a").apply(before)).isEqualTo(before);
    assertThat(PixelNames.none("c").apply(before)).isEqualTo(before);
  }

  @Test
  void pixelsOnOtherChainsStay() {
    Lamp both = Lamp.ofPixels("a", new PixelRun("d", 0, 2), new PixelRun("c", 0, 1));
    Project named = names("", "a").apply(project(both));
    assertThat(runs(named, "a")).containsExactly(new PixelRun("d", 0, 2), new PixelRun("c", 1, 1));
  }

  @Test
  void lampWithoutAnyPixelIsNamedAndRefused() {
    Project before = project(lamp("a", 0, 1), lamp("b", 1, 1));
    PixelNames names = names("b", "");
    assertThat(names.emptied(before)).extracting(Lamp::id).containsExactly("a");
    assertThatThrownBy(() -> names.apply(before)).isInstanceOf(InvalidModelException.class);
    assertThat(names("b", "a").emptied(before)).isEmpty();
  }

  @Test
  void lampsOnOutputsAreLeftAlone() {
    Project before = Projects4Tests.small();
    Project named =
        PixelNames.none("c")
            .with(0, Optional.of("new-1"))
            .with(1, Optional.of("roof"))
            .apply(before);
    assertThat(named.rig().lamp("amber")).isEqualTo(before.rig().lamp("amber"));
  }
}
