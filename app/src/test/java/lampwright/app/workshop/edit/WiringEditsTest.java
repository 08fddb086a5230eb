package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import lampwright.app.start.ModelRequest;
import lampwright.app.start.NewModel;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import org.junit.jupiter.api.Test;

class WiringEditsTest {
  private static Project model() {
    return NewModel.make(ModelRequest.usual(ModelKind.RECOVERY_VEHICLE)).project();
  }

  private static Chain chain(Project project) {
    return project.rig().chains().get(0);
  }

  private static Lamp lamp(Project project, String id) {
    return project.rig().lamp(id).orElseThrow();
  }

  private static int first(Project project, String lamp) {
    return ((Fitting.Pixels) lamp(project, lamp).fitting()).runs().get(0).from();
  }

  @Test
  void lampMovesToTheFrontAndTheOthersMoveUp() {
    Project before = model();
    int from = first(before, "tail-lamp-left");
    Project after = WiringEdits.move(before, "chain-1", from, 0);
    assertThat(first(after, "tail-lamp-left")).isZero();
    String old =
        before.rig().lamps().stream().filter(WiringEditsTest::isFirst).findFirst().get().id();
    assertThat(first(after, old)).isEqualTo(1);
    assertThat(after.scenes()).isEqualTo(before.scenes());
  }

  private static boolean isFirst(Lamp lamp) {
    return lamp.fitting() instanceof Fitting.Pixels pixels && pixels.runs().get(0).from() == 0;
  }

  @Test
  void lampIsNotSplitByWhatIsPutBesideIt() {
    Project before = model();
    int bar = first(before, "roof-bar");
    int tail = first(before, "tail-lamp-left");
    Project after = WiringEdits.move(before, "chain-1", tail, bar + 3);
    assertThat(first(after, "tail-lamp-left")).isEqualTo(bar);
    assertThat(((Fitting.Pixels) lamp(after, "roof-bar").fitting()).runs())
        .containsExactly(new PixelRun("chain-1", bar + 1, 8));
  }

  @Test
  void movingBackGivesTheProjectAgain() {
    Project before = model();
    int from = first(before, "tail-lamp-left");
    Project there = WiringEdits.move(before, "chain-1", from, 0);
    assertThat(WiringEdits.move(there, "chain-1", 0, from)).isEqualTo(before);
  }

  @Test
  void ontoItselfOrOffTheChainChangesNothing() {
    Project project = model();
    assertThat(WiringEdits.move(project, "chain-1", 2, 2)).isSameAs(project);
    assertThat(WiringEdits.move(project, "chain-1", 0, 9999)).isSameAs(project);
    assertThat(WiringEdits.move(project, "none", 0, 1)).isSameAs(project);
  }

  /** Each lamp shows the same light, pixel by pixel, wherever it is on the wire. */
  @Test
  void lightOfEveryLampStaysTheSame() {
    Random random = new Random(24);
    Project before = model();
    Project after = before;
    int pixels = chain(before).pixels();
    for (int k = 0; k < 30; k++) {
      after = WiringEdits.move(after, "chain-1", random.nextInt(pixels), random.nextInt(pixels));
    }
    assertThat(after).isNotEqualTo(before);
    assertThat(light(after)).isEqualTo(light(before));
    List<Integer> all = new ArrayList<>();
    for (Lamp lamp : after.rig().lamps()) {
      all.addAll(numbers(lamp));
    }
    assertThat(new TreeSet<>(all)).hasSize(pixels);
    assertThat(all).hasSize(pixels);
  }

  private static List<Integer> numbers(Lamp lamp) {
    List<Integer> numbers = new ArrayList<>();
    if (lamp.fitting() instanceof Fitting.Pixels pixels) {
      for (PixelRun run : pixels.runs()) {
        for (int pixel = run.from(); pixel < run.end(); pixel++) {
          numbers.add(pixel);
        }
      }
    }
    return numbers;
  }

  // Four bytes a pixel, as the only chain is RGBW and comes first in a frame.
  private static Map<String, String> light(Project project) {
    FrameTable table = FrameTable.of(project.rig(), project.scenes().get(0));
    Map<String, String> light = new TreeMap<>();
    for (int frame = 0; frame < table.frameCount(); frame += 7) {
      byte[] bytes = table.frame(frame);
      for (Lamp lamp : project.rig().lamps()) {
        for (int pixel : numbers(lamp)) {
          light.merge(
              lamp.id(),
              Arrays.toString(Arrays.copyOfRange(bytes, 4 * pixel, 4 * pixel + 4)),
              String::concat);
        }
      }
    }
    return light;
  }
}
