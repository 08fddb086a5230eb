package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import lampwright.app.workshop.Projects4Tests;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ProjectWriter;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RigEditsTest {
  private final Project project = Projects4Tests.small();

  @Test
  void renamedPartsAreFollowedEverywhere() {
    Project renamed = ChainEdits.rename(project, "c", "roof-line");
    assertThat(renamed.rig().lamp("roof").orElseThrow().fitting())
        .isEqualTo(new Fitting.Pixels(List.of(new PixelRun("roof-line", 0, 2))));
    renamed = LampEdits.rename(renamed, "roof", "bar");
    assertThat(renamed.scenes().get(0).tracks().get(0).lamps()).containsExactly("bar");
    renamed = OutputEdits.rename(renamed, "o", "side");
    assertThat(renamed.rig().lamp("amber").orElseThrow().fitting())
        .isEqualTo(new Fitting.Output("side"));
    FrameTable before = FrameTable.of(project.rig(), project.scenes().get(0));
    FrameTable after = FrameTable.of(renamed.rig(), renamed.scenes().get(0));
    assertThat(after.frame(7)).isEqualTo(before.frame(7));
  }

  @Test
  void idThatAnotherHasIsRefused() {
    Project two = ChainEdits.add(project);
    String added = two.rig().chains().get(1).id();
    assertThatThrownBy(() -> ChainEdits.rename(two, added, "c"))
        .isInstanceOf(InvalidModelException.class)
        .hasMessageContaining("must be unique");
  }

  @Test
  void removedChainTakesItsLampsAndTheirCuesAlong() {
    Project removed = ChainEdits.remove(project, "c");
    assertThat(removed.rig().lamps()).extracting(Lamp::id).containsExactly("amber");
    assertThat(removed.scenes().get(0).tracks()).isEmpty();
  }

  @Test
  void lastChainOrOutputStays() {
    Project one = ChainEdits.remove(project, "c");
    assertThatThrownBy(() -> OutputEdits.remove(one, "o"))
        .isInstanceOf(InvalidModelException.class)
        .hasMessageContaining("must have at least one chain or output");
  }

  @Test
  void shorterChainCutsLampsAtItsEnd() {
    assertThat(ChainEdits.cutBy(project.rig(), "c", 1))
        .extracting(Lamp::id)
        .containsExactly("roof");
    assertThat(ChainEdits.cutBy(project.rig(), "c", 2)).isEmpty();
    Project shorter = ChainEdits.setPixels(project, "c", 1);
    assertThat(shorter.rig().lamp("roof").orElseThrow().fitting())
        .isEqualTo(new Fitting.Pixels(List.of(new PixelRun("c", 0, 1))));
  }

  @Test
  void markedPixelsBecomeRunsOfOneLamp() {
    Project more = ChainEdits.setPixels(project, "c", 12);
    Project with = LampEdits.addOfPixels(more, "c", Set.of(9, 4, 5, 6, 11));
    Lamp lamp = with.rig().lamps().get(2);
    assertThat(lamp.fitting())
        .isEqualTo(
            new Fitting.Pixels(
                List.of(
                    new PixelRun("c", 4, 3), new PixelRun("c", 9, 1), new PixelRun("c", 11, 1))));
    assertThat(ChainEdits.free(with.rig(), with.rig().chains().get(0)))
        .containsExactly(2, 3, 7, 8, 10);
  }

  @Test
  void anotherTypeKeepsWhatFits() {
    Chain chain = project.rig().chains().get(0);
    Chain rgb = ChainSettings.withType(chain, BuiltInPixelTypes.find("ws2812b").orElseThrow());
    assertThat(rgb.order().letters()).isEqualTo("GRB");
    assertThat(rgb.pixels()).isEqualTo(2);
    assertThat(rgb.whiteKelvin()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"small", "recovery-tractor", "mountain-rescue"})
  void benchTestLightsEveryEmitterOfTheChainAloneInOrder(String name) {
    Project base = name.equals("small") ? project : Projects4Tests.sample(name);
    Chain chain = base.rig().chains().get(0);
    Project with = ChainWalk.add(base, chain.id());
    Scene test = with.scenes().get(with.scenes().size() - 1);
    assertThat(test.id()).isEqualTo("bench-test");
    Project plain =
        Project.RIG.with(
            with,
            Rig.LAMPS.with(
                with.rig(),
                with.rig().lamps().stream()
                    .map(l -> Lamp.FEEL.with(l, java.util.Optional.empty()))
                    .toList()));
    FrameTable table = FrameTable.of(plain.rig(), test);
    int emitters = chain.bytes();
    Set<Integer> seen = new java.util.LinkedHashSet<>();
    for (int i = 0; i < table.frameCount(); i += 25) {
      byte[] frame = table.frame(i);
      int[] lit =
          java.util.stream.IntStream.range(0, emitters).filter(b -> frame[b] != 0).toArray();
      assertThat(lit).as("frame " + i).hasSize(1);
      assertThat(frame[lit[0]] & 0xFF).isLessThan(64);
      seen.add(lit[0]);
    }
    assertThat(seen).hasSize(emitters);
    // One pixel after the other, whatever the order of its emitters.
    int[] pixels = seen.stream().mapToInt(b -> b / chain.order().size()).toArray();
    int[] sorted = pixels.clone();
    Arrays.sort(sorted);
    if (!name.equals("mountain-rescue")) {
      assertThat(pixels).isEqualTo(sorted);
    }
    byte[] text = ProjectWriter.write(with).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    assertThat(ProjectReader.read("p", text).project()).contains(with);
  }

  @Test
  void secondBenchTestGetsAnIdOfItsOwn() {
    Project twice = ChainWalk.add(ChainWalk.add(project, "c"), "c");
    assertThat(twice.scenes()).extracting(Scene::id).contains("bench-test", "bench-test-1");
  }
}
