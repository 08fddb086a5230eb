package lampwright.app.workshop.model.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.exporters.picture.TypeMeasure;
import lampwright.exporters.wiring.WiringPlan;
import org.junit.jupiter.api.Test;

class RigModelTest {
  private final List<String> told = new ArrayList<>();
  private int answer = 1;
  private final Dialogs dialogs =
      new Dialogs() {
        @Override
        public int choose(String title, String text, List<String> answers) {
          told.add(text);
          return answer;
        }

        @Override
        public Optional<Path> fileToOpen(String title, List<String> patterns) {
          return Optional.empty();
        }

        @Override
        public Optional<Path> fileToSave(String title, String name, List<String> patterns) {
          return Optional.empty();
        }

        @Override
        public Optional<Path> folder(String title) {
          return Optional.empty();
        }

        @Override
        public void tell(String title, String text) {
          told.add(text);
        }
      };
  private final Bench bench = new Bench(Projects4Tests.small());
  private final RigModel model = new RigModel(bench, dialogs);
  private final RigCommands hands = new RigCommands(model, dialogs);

  @SuppressWarnings("unchecked")
  private <V> Slot<V> slot(String key) {
    return (Slot<V>)
        model.formProperty().get().orElseThrow().groups().stream()
            .map(Form.Group::slots)
            .flatMap(List::stream)
            .filter(s -> s.key().equals(key))
            .findFirst()
            .orElseThrow();
  }

  private Chain chain() {
    return bench.project().rig().chains().get(0);
  }

  @Test
  void everyPartHasASheetWithAllItsValues() {
    for (String sample :
        new String[] {"recovery-tractor", "mountain-rescue", "harbour-dusk", "bench-rgbw"}) {
      bench.open(Projects4Tests.sample(sample));
      for (RigPart part : model.parts()) {
        model.chosenProperty().set(part);
        Form form = model.formProperty().get().orElseThrow();
        assertThat(form.groups()).isNotEmpty();
        assertThat(form.title()).isNotBlank();
        // What is set to what it is changes nothing.
        Project before = bench.project();
        form.groups().forEach(group -> group.slots().forEach(RigModelTest::setToItself));
        assertThat(bench.project()).isEqualTo(before);
      }
    }
  }

  private static <V> void setToItself(Slot<V> slot) {
    assertThat(slot.set(slot.value())).as(slot.key()).isTrue();
  }

  @Test
  void renamedPartStaysChosen() {
    model.chosenProperty().set(new RigPart.OfChain("c"));
    assertThat(this.<String>slot("chain.id").set("roof-line")).isTrue();
    assertThat(model.chosenProperty().get()).isEqualTo(new RigPart.OfChain("roof-line"));
    assertThat(bench.undoNameProperty().get()).contains("Change id");
    assertThat(this.<String>slot("chain.id").set("Roof line")).isFalse();
    assertThat(this.<String>slot("chain.id").refusalProperty().get().orElseThrow())
        .contains("must have 1 to 40 lower-case letters, digits or hyphens");
    bench.undo();
    assertThat(model.chosenProperty().get()).isEqualTo(new RigPart.Supply());
  }

  @Test
  void shorteningAChainAsksBeforeALampLosesPixels() {
    model.chosenProperty().set(new RigPart.OfChain("c"));
    assertThat(this.<Long>slot("pixels").set(1L)).isFalse();
    assertThat(told)
        .containsExactly(
            "New number of LEDs: 1. The chain becomes too short for: roof. These lamps lose the pixels"
                + " beyond its end.");
    assertThat(chain().pixels()).isEqualTo(2);
    answer = 0;
    assertThat(this.<Long>slot("pixels").set(1L)).isTrue();
    assertThat(chain().pixels()).isEqualTo(1);
    assertThat(this.<Long>slot("pixels").set(20L)).isTrue();
    assertThat(told).hasSize(2);
  }

  @Test
  void markedFreePixelsBecomeALampThatIsChosen() {
    model.chosenProperty().set(new RigPart.OfChain("c"));
    this.<Long>slot("pixels").set(8L);
    model.markedProperty().set(Set.of(1, 3, 4));
    hands.makeLamp();
    Lamp made = bench.project().rig().lamps().get(2);
    assertThat(bench.selection().lamp()).contains(made.id());
    assertThat(model.chosenProperty().get()).isEqualTo(new RigPart.OfLamp(made.id()));
    assertThat(model.owner("c", 3)).contains(made);
    // Pixel 1 has a lamp already.
    assertThat(model.owner("c", 1).map(Lamp::id)).contains("roof");
    model.chosenProperty().set(new RigPart.OfChain("c"));
    hands.makeLamps();
    assertThat(bench.project().rig().lamps()).hasSize(7);
  }

  @Test
  void removalSaysWhatWentAndTheLastPartStays() {
    model.chosenProperty().set(new RigPart.OfChain("c"));
    hands.remove();
    assertThat(bench.undoNameProperty().get())
        .contains("Remove Chain c, 5\u00a0V RGBW and 1 lamps");
    model.chosenProperty().set(new RigPart.OfOutput("o"));
    hands.remove();
    assertThat(bench.project().rig().outputs()).hasSize(1);
    assertThat(told.get(0)).contains("must have at least one chain or output");
  }

  @Test
  void benchTestIsPutOnTheBench() {
    assertThat(hands.testable()).isPresent();
    hands.benchTest();
    assertThat(bench.selection().scene()).contains("bench-test");
    assertThat(bench.undoNameProperty().get()).contains("Add bench test");
  }

  @Test
  void scenesAreAddedAndCopied() {
    hands.addScene();
    assertThat(bench.selection().scene()).contains("scene-1");
    bench.select(bench.selection().withScene("work"));
    hands.copyScene();
    assertThat(bench.selection().scene()).contains("work-1");
    assertThat(bench.scene().orElseThrow().tracks())
        .isEqualTo(bench.project().scene("work").orElseThrow().tracks());
  }

  @Test
  void lampMovesAlongTheChainAndOneStepTakesItBack() {
    Project before =
        lampwright.app.start.NewModel.make(
                lampwright.app.start.ModelRequest.usual(
                    lampwright.engine.document.ModelKind.LAUNCH))
            .project();
    bench.open(before);
    String chain = before.rig().chains().get(0).id();
    // Several moments of one drag.
    Object gesture = new Object();
    hands.moveAlong(before, chain, 0, 3, gesture);
    hands.moveAlong(before, chain, 0, 5, gesture);
    bench.endGesture();
    assertThat(bench.project()).isNotEqualTo(before);
    assertThat(bench.undoNameProperty().get()).contains("Change wiring order");
    bench.undo();
    assertThat(bench.project()).isEqualTo(before);
    assertThat(hands.stepAlong(chain, 0, 1)).isEqualTo(1);
    assertThat(hands.stepAlong(chain, 1, -1)).isZero();
    assertThat(bench.project()).isEqualTo(before);
    assertThat(hands.stepAlong(chain, 0, -1)).isZero();
    bench.select(bench.selection().withLamps(List.of(before.rig().lamps().get(0).id())));
    hands.stepLamp(1);
    assertThat(bench.project()).isNotEqualTo(before);
  }

  @Test
  void wiringIsFoundByPoints() {
    Project project = Projects4Tests.sample("recovery-tractor");
    WiringLayout layout =
        new WiringLayout(
            project.rig(), WiringPlan.of(project.rig(), List.of()), 300, 13, TypeMeasure.ESTIMATE);
    for (WiringLayout.ChainBlock block : layout.chains()) {
      for (int pixel = 0; pixel < block.chain().pixels(); pixel++) {
        assertThat(layout.hit(block.x(pixel) + 3, block.y(pixel) + 3))
            .contains(new WiringLayout.Hit(block.chain().id(), pixel));
      }
      assertThat(layout.hit(5, block.y() + 3))
          .contains(new WiringLayout.Hit(block.chain().id(), -1));
    }
    assertThat(layout.hit(5, layout.height() + 1)).isEmpty();
    assertThat(layout.hit(5, layout.outputs().get(0).y() + 2).map(WiringLayout.Hit::pixel))
        .contains(-1);
  }

  @Test
  void aSceneThatSituationsUseIsClearedOnlyIfTheBuilderAgrees() {
    bench.open(Projects4Tests.sample("recovery-tractor"));
    Project before = bench.project();
    model.chosenProperty().set(new RigPart.OfScene("towed-backwards"));
    hands.remove();
    assertThat(told).singleElement().asString().contains("towed-backwards: towed");
    assertThat(bench.project()).isEqualTo(before);
    answer = 0;
    hands.remove();
    assertThat(bench.project().scene("towed-backwards")).isEmpty();
    bench.undo();
    assertThat(bench.project()).isEqualTo(before);
  }

  @Test
  void inputsAreAddedAndNamedOnesStay() {
    bench.open(Projects4Tests.reacting());
    hands.addInput();
    assertThat(model.chosenProperty().get()).isEqualTo(new RigPart.OfInput("input-1"));
    this.<String>slot("input.id").set("winch");
    assertThat(model.chosenProperty().get()).isEqualTo(new RigPart.OfInput("winch"));
    hands.remove();
    assertThat(bench.project().rig().inputs()).hasSize(3);
    model.chosenProperty().set(new RigPart.OfInput("throttle"));
    hands.remove();
    assertThat(bench.project().rig().inputs()).hasSize(3);
    assertThat(told).singleElement().asString().contains("situation standing, condition 1");
  }
}
