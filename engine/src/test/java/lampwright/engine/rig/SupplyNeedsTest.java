package lampwright.engine.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import lampwright.engine.check.InvalidModelException;
import org.junit.jupiter.api.Test;

class SupplyNeedsTest {
  private static SupplyNeeds needs(String type) {
    return BuiltInPixelTypes.find(type).orElseThrow().needs();
  }

  /** WS2812B datasheet: 3.5-5.3 V absolute maximum, stated from 4.5 V; VIH 0.7 VDD, VDD + 0.5 V. */
  @Test
  void levelsOfTheWs2812bFollowItsSupply() {
    SupplyNeeds needs = needs("ws2812b");

    assertThat(needs.failVolts()).isEqualTo(3.5);
    assertThat(needs.minVolts()).isEqualTo(4.5);
    assertThat(needs.maxVolts()).isEqualTo(5.3);
    assertThat(needs.inputHighVolts(5)).isCloseTo(3.5, within(1e-9));
    assertThat(needs.inputMaxVolts(3.7)).isCloseTo(4.2, within(1e-9));
  }

  /** WS2812B-2020 datasheet: VIH 2.7 V, so that 3.3 V drive is in range at any supply. */
  @Test
  void levelInVoltsHoldsAtAnySupply() {
    assertThat(needs("ws2812b-2020").inputHighVolts(3.7)).isEqualTo(2.7);
    assertThat(needs("ws2812b-2020").inputHighVolts(5.3)).isEqualTo(2.7);
  }

  /** Users' measurements: 3.5 V, whatever the 12 V are. */
  @Test
  void inputsOfA12VoltPartAreThoseOfA5VoltPart() {
    assertThat(needs("ws2815").inputHighVolts(12)).isEqualTo(3.5);
    assertThat(needs("ws2815").inputMaxVolts(12)).isEqualTo(5.5);
  }

  @Test
  void voltagesStandInTheirOrder() {
    InputLevel level = new InputLevel(0.7, 0);

    assertThatThrownBy(() -> new SupplyNeeds(4.6, 4.5, 5.3, level, level))
        .isInstanceOf(InvalidModelException.class)
        .hasMessageContaining("failVolts: 4.6: must be at most minVolts, which is 4.5");
    assertThatThrownBy(() -> new SupplyNeeds(4.5, 4.5, 4.4, level, level))
        .isInstanceOf(InvalidModelException.class)
        .hasMessageContaining("maxVolts: 4.4: must be at least minVolts, which is 4.5");
    assertThatThrownBy(() -> new SupplyNeeds(Double.NaN, 4.5, 5, level, level))
        .isInstanceOf(InvalidModelException.class);
  }
}
