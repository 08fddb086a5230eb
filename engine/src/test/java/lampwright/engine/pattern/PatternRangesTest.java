package lampwright.engine.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** Patterns have the words of docs/formats.md and refuse by name what lies outside their ranges. */
class PatternRangesTest {
  private static final Look LOOK = Look.DEFAULT;
  private static final BigDecimal ZERO = BigDecimal.ZERO;
  private static final BigDecimal ONE = BigDecimal.ONE;
  private static final BigDecimal FAR = new BigDecimal("1000001");

  private static void refused(String name, ThrowingCallable makes) {
    assertThatThrownBy(makes)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(name);
  }

  private static Keyframe keyframe(String atMs) {
    return new Keyframe(
        new BigDecimal(atMs), Optional.empty(), OptionalDouble.empty(), Easing.LINEAR);
  }

  @Test
  void kindsAreTheWordsOfTheProjectFile() {
    List<Pattern> patterns =
        List.of(
            new Steady(LOOK),
            new Flash(LOOK, ZERO, ONE, ONE, 1, ZERO),
            new Indicator(LOOK, ZERO, ONE, ONE),
            new RotatingBeacon(LOOK, ZERO, ONE, 120, true, List.of()),
            new Chase(LOOK, ZERO, ONE, 1, 0, false),
            new Fill(LOOK, ZERO, ONE, ONE, ONE),
            new ColourCycle(LOOK, ZERO, ONE, 0, 1, false),
            new Tint(LOOK, 4000, OptionalDouble.empty()),
            new Fade(LOOK, Optional.empty(), Optional.empty(), 0, 1, Easing.LINEAR),
            new Keyframes(LOOK, ZERO, List.of(keyframe("0")), true),
            new Flicker(LOOK, 1, 0.5, ONE),
            new TestWalk(LOOK, ZERO, ONE),
            new LightCharacter(LOOK, ZERO, "Fl 2s", ONE));
    assertThat(patterns)
        .extracting(Pattern::kind)
        .containsExactly(
            "steady",
            "flash",
            "indicator",
            "rotating-beacon",
            "chase",
            "fill",
            "colour-cycle",
            "tint",
            "fade",
            "keyframes",
            "flicker",
            "test-walk",
            "light-character");
  }

  @Test
  void levelsAndSharesAreFrom0To1() {
    refused("level", () -> new Look(LOOK.colour(), 1.01));
    refused("onShare", () -> new Indicator(LOOK, ZERO, ONE, new BigDecimal("1.01")));
    refused("saturation", () -> new ColourCycle(LOOK, ZERO, ONE, 0, -0.01, false));
    refused("depth", () -> new Flicker(LOOK, 1, 1.01, ONE));
    refused(
        "fromLevel",
        () -> new Fade(LOOK, Optional.empty(), Optional.empty(), -0.01, 1, Easing.LINEAR));
    refused(
        "toLevel",
        () -> new Fade(LOOK, Optional.empty(), Optional.empty(), 0, 1.01, Easing.LINEAR));
    refused(
        "level",
        () -> new Keyframe(ZERO, Optional.empty(), OptionalDouble.of(1.01), Easing.LINEAR));
  }

  @Test
  void timesAndRatesAreAbove0() {
    refused("perMinute", () -> new Indicator(LOOK, ZERO, ZERO, ONE));
    refused("perMinute", () -> new RotatingBeacon(LOOK, ZERO, ZERO, 120, true, List.of()));
    refused("stepMs", () -> new Chase(LOOK, ZERO, ZERO, 1, 0, false));
    refused("periodMs", () -> new ColourCycle(LOOK, ZERO, ZERO, 0, 1, false));
    refused("rateHz", () -> new Flicker(LOOK, 1, 0.5, ZERO));
    refused("stepMs", () -> new TestWalk(LOOK, ZERO, ZERO));
    refused("unitMs", () -> new LightCharacter(LOOK, ZERO, "Fl 2s", ZERO));
    refused("onMs", () -> new Flash(LOOK, ZERO, ZERO, ZERO, 1, ZERO));
    refused("overMs", () -> new Fill(LOOK, ZERO, ZERO, ZERO, ZERO));
  }

  /** A period of which one part alone is above 0 is a period. */
  @Test
  void onePartOfAPeriodIsEnough() {
    assertThat(new Flash(LOOK, ZERO, ONE, ZERO, 1, ZERO).onMs()).isEqualTo(ONE);
    assertThat(new Flash(LOOK, ZERO, ZERO, ONE, 1, ZERO).offMs()).isEqualTo(ONE);
    assertThat(new Flash(LOOK, ZERO, ZERO, ZERO, 1, ONE).gapMs()).isEqualTo(ONE);
    assertThat(new Fill(LOOK, ZERO, ONE, ZERO, ZERO).overMs()).isEqualTo(ONE);
    assertThat(new Fill(LOOK, ZERO, ZERO, ONE, ZERO).holdMs()).isEqualTo(ONE);
    assertThat(new Fill(LOOK, ZERO, ZERO, ZERO, ONE).offMs()).isEqualTo(ONE);
  }

  @Test
  void phasesGoToAMillion() {
    assertThat(new TestWalk(LOOK, BigDecimal.valueOf(1_000_000), ONE).phase())
        .isEqualByComparingTo("1000000");
    refused("phase", () -> new Flash(LOOK, FAR, ONE, ONE, 1, ZERO));
    refused("phase", () -> new Indicator(LOOK, FAR, ONE, ONE));
    refused("phase", () -> new RotatingBeacon(LOOK, FAR, ONE, 120, true, List.of()));
    refused("phase", () -> new Chase(LOOK, FAR, ONE, 1, 0, false));
    refused("phase", () -> new Fill(LOOK, FAR, ONE, ONE, ONE));
    refused("phase", () -> new ColourCycle(LOOK, FAR, ONE, 0, 1, false));
    refused("phase", () -> new Keyframes(LOOK, FAR, List.of(keyframe("0")), true));
    refused("phase", () -> new TestWalk(LOOK, FAR, ONE));
    refused("phase", () -> new LightCharacter(LOOK, FAR, "Fl 2s", ONE));
  }

  @Test
  void otherRangesAreThoseOfTheirPatterns() {
    refused("flashes", () -> new Flash(LOOK, ZERO, ONE, ONE, 0, ZERO));
    refused("beamDegrees", () -> new RotatingBeacon(LOOK, ZERO, ONE, 361, true, List.of()));
    refused(
        "angles[1]", () -> new RotatingBeacon(LOOK, ZERO, ONE, 120, true, List.of(360.0, -361.0)));
    refused("width", () -> new Chase(LOOK, ZERO, ONE, 0, 0, false));
    refused("tail", () -> new Chase(LOOK, ZERO, ONE, 1, -1, false));
    refused("spread", () -> new ColourCycle(LOOK, ZERO, ONE, 1001, 1, false));
    refused("kelvin", () -> new Tint(LOOK, 1666, OptionalDouble.empty()));
    refused("toKelvin", () -> new Tint(LOOK, 4000, OptionalDouble.of(25_001)));
    refused("seed", () -> new Flicker(LOOK, -1, 0.5, ONE));
    refused("character", () -> new LightCharacter(LOOK, ZERO, "nonsense", ONE));
  }

  @Test
  void morseUnitIsAtMost10Seconds() {
    assertThat(new LightCharacter(LOOK, ZERO, "Mo(A) 200s", BigDecimal.valueOf(10_000)).unitMs())
        .isEqualByComparingTo("10000");
    refused(
        "unitMs", () -> new LightCharacter(LOOK, ZERO, "Mo(A) 200s", new BigDecimal("10000.1")));
  }

  @Test
  void keyframesAreInOrderOfTime() {
    assertThat(
            new Keyframes(LOOK, ZERO, List.of(keyframe("0"), keyframe("5"), keyframe("5")), true)
                .frames())
        .hasSize(3);
    refused(
        "frames[2].atMs: 4: must be at least 5, the time of the keyframe before",
        () ->
            new Keyframes(LOOK, ZERO, List.of(keyframe("0"), keyframe("5"), keyframe("4")), true));
    refused("frames", () -> new Keyframes(LOOK, ZERO, List.of(), true));
    refused("atMs", () -> keyframe("-1"));
  }
}
