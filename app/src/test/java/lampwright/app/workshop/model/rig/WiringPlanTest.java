package lampwright.app.workshop.model.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.app.workshop.Projects4Tests;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Rig;
import lampwright.exporters.picture.TypeMeasure;
import lampwright.exporters.wiring.WiringPart;
import lampwright.exporters.wiring.WiringPart.State;
import lampwright.exporters.wiring.WiringPart.Symbol;
import lampwright.exporters.wiring.WiringPlan;
import org.junit.jupiter.api.Test;

class WiringPlanTest {
  private final Rig rig = Projects4Tests.sample("recovery-tractor").rig();
  private final String first = rig.chains().get(0).id();

  private static Finding.Draft about(Code code, Subject subject) {
    return Finding.of(code, subject);
  }

  private static String words(List<WiringPart> parts) {
    return WiringPlan.words(parts).replace('\u00a0', ' ');
  }

  @Test
  void whatIsSetAndCommonPracticeAreThereWithoutFindings() {
    WiringPlan.OfChain chain = WiringPlan.of(rig, List.of()).chains().get(0);
    assertThat(words(chain.supply())).contains("wire AWG 28, 250 mm", "capacitor 470 µF or more");
    assertThat(words(chain.data())).isEqualTo("ATmega328P pin PB0; resistor 300 to 500 Ω");
    assertThat(chain.supply()).allMatch(part -> part.state() == State.FITTED);
    assertThat(chain.supply()).noneMatch(part -> part.symbol() == Symbol.FUSE);
  }

  @Test
  void fuseIsAskedForByItsFindingAlone() {
    Finding unfused =
        about(Code.LEAD_UNFUSED, new Subject.OneChain(first))
            .with("supply", Figure.amps(1.5))
            .with("limit", Figure.amps(0.4))
            .make();
    WiringPlan plan = WiringPlan.of(rig, List.of(unfused));
    assertThat(words(plan.chains().get(0).supply())).startsWith("add fuse 0.40 A at most; ");
    assertThat(plan.chains().get(0).supply().get(0).state()).isEqualTo(State.ASKED);
    assertThat(plan.chains().get(1).supply()).noneMatch(part -> part.state() == State.ASKED);
  }

  @Test
  void levelShifterIsAskedForByItsFindingAlone() {
    Finding low =
        about(Code.DATA_LEVEL_LOW, new Subject.OneChain(first))
            .with("volts", Figure.volts(3.3))
            .with("limit", Figure.volts(3.5))
            .with("supply", Figure.volts(5))
            .make();
    WiringPlan plan = WiringPlan.of(rig, List.of(low));
    assertThat(words(plan.chains().get(0).data()))
        .endsWith("; add level shifter 3.30 V, needs 3.50 V");
  }

  @Test
  void hotWireHasItsCurrentAndItsLimit() {
    Finding hot =
        about(Code.LEAD_HEAT, new Subject.OneChain(first))
            .with("current", Figure.amps(2.9))
            .with("limit", Figure.amps(0.4))
            .with("remedy", Figure.words("thicker"))
            .make();
    WiringPart wire =
        WiringPlan.of(rig, List.of(hot)).chains().get(0).supply().stream()
            .filter(part -> part.symbol() == Symbol.WIRE)
            .findFirst()
            .orElseThrow();
    assertThat(wire.state()).isEqualTo(State.TROUBLE);
    assertThat(wire.figure().replace('\u00a0', ' '))
        .isEqualTo("AWG 28, 250 mm: 2.90 A, limit 0.40 A");
  }

  @Test
  void longStripsGoOnInTheNextLineAndStayWithinTheWidth() {
    List<WiringPart> parts = WiringPlan.of(rig, List.of()).chains().get(0).supply();
    for (double width : new double[] {60, 120, 200, 800}) {
      PartStrip strip = PartStrip.of(parts, width, 13, TypeMeasure.ESTIMATE);
      assertThat(strip.places()).allMatch(place -> place.x() + place.width() <= width);
    }
    assertThat(PartStrip.of(parts, 800, 13, TypeMeasure.ESTIMATE).lines()).isOne();
    assertThat(PartStrip.of(parts, 120, 13, TypeMeasure.ESTIMATE).lines()).isGreaterThan(1);
  }
}
