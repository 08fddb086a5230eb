package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Cue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The ranges that forms show are those that the records hold to. */
class SettingsTest {
  /** A setting with a record that has it. */
  record Case<R, V>(R record, Setting<R, V> setting, String of) {
    @Override
    public String toString() {
      return of + " " + setting.key();
    }
  }

  static Stream<Case<?, ?>> settings() {
    List<Case<?, ?>> cases = new ArrayList<>();
    for (String kind : Patterns.kinds()) {
      Pattern pattern = Patterns.fresh(kind, Look.DEFAULT);
      PatternSettings.look().forEach(s -> cases.add(of(pattern, s, kind)));
      PatternSettings.of(pattern).forEach(s -> cases.add(of(pattern, s, kind)));
    }
    Cue cue = Cue.of(0, 100, Patterns.fresh("steady", Look.DEFAULT));
    CueSettings.time().forEach(s -> cases.add(of(cue, s, "cue")));
    cases.add(of(cue, CueSettings.blend(), "cue"));
    cases.add(of(cue, CueSettings.kind(), "cue"));
    Project project = Projects4Tests.small();
    lampwright.engine.rig.Rig fed =
        Rig.FEED.with(
            project.rig(),
            Optional.of(
                lampwright.engine.rig.Feed.of(new lampwright.engine.rig.Conductor.Gauge(24))));
    for (List<Setting<lampwright.engine.rig.Rig, ?>> group :
        List.of(
            RigSettings.supply(),
            RigSettings.light(),
            FeedSettings.ofRig(),
            RigSettings.controller())) {
      group.forEach(s -> cases.add(of(fed, s, "rig")));
    }
    PixelTypeSettings.of(project.rig().chains().get(0).type())
        .forEach(s -> cases.add(of(project.rig().chains().get(0).type(), s, "pixel type")));
    PixelType ranges = BuiltInPixelTypes.find("ws2813").orElseThrow();
    PixelTypeSettings.of(ranges).forEach(s -> cases.add(of(ranges, s, "ranges")));
    lampwright.engine.rig.Rig powered =
        Rig.BATTERY.with(
            project.rig(),
            Optional.of(
                lampwright.engine.rig.Battery.of(2000)
                    .withRegulator(lampwright.engine.rig.Regulator.BUCK)));
    BatterySettings.all().forEach(s -> cases.add(of(powered, s, "battery")));
    Chain chain = project.rig().chains().get(0);
    ChainSettings.of(List.of(), chain.type()).forEach(s -> cases.add(of(chain, s, "chain")));
    Chain wired = Chain.FEED.with(chain, fed.feed());
    FeedSettings.ofChain().forEach(s -> cases.add(of(wired, s, "chain feed")));
    OutputSettings.all().forEach(s -> cases.add(of(project.rig().outputs().get(0), s, "output")));
    lampwright.engine.rig.Lamp lamp =
        Lamp.PLACE.with(
            project.rig().lamps().get(0), Optional.of(new Place(View.SIDE, 0.5, 0.5, 0.1)));
    LampSettings.of(lamp).forEach(s -> cases.add(of(lamp, s, "lamp")));
    LampSettings.place().forEach(s -> cases.add(of(lamp, s, "place")));
    SceneSettings.all().forEach(s -> cases.add(of(project.scenes().get(0), s, "scene")));
    return cases.stream();
  }

  private static <R, V> Case<R, V> of(R record, Setting<R, V> setting, String of) {
    return new Case<>(record, setting, of);
  }

  @ParameterizedTest
  @MethodSource("settings")
  <R, V> void settingKeepsItsValue(Case<R, V> of) {
    V value = of.setting().get().apply(of.record());
    R same = of.setting().set().apply(of.record(), value);
    assertThat(of.setting().get().apply(same)).isEqualTo(value);
    assertThat(Texts.of("settings").find(of.setting().key())).as("its name").isPresent();
  }

  @ParameterizedTest
  @MethodSource("settings")
  <R, V> void rangeIsThatOfTheRecord(Case<R, V> of) {
    Kind<?> kind = of.setting().kind();
    boolean maybe = kind instanceof Kind.Maybe<?>;
    if (kind instanceof Kind.Maybe<?> m) {
      kind = m.kind();
    }
    // The ends of a range bound each other, and so do the voltages of a pixel type.
    String key = of.setting().key();
    if (kind instanceof Kind.Amount amount) {
      if (!key.endsWith(".greatest") && !key.matches("type\\.m..Volts")) {
        taken(of, amount.min(), maybe);
      }
      refused(
          of,
          amount
              .min()
              .subtract(
                  amount.min().signum() == 0
                      ? new BigDecimal("0.5")
                      : amount.min().abs().add(BigDecimal.ONE)),
          maybe);
      // Length and rate of a scene bound each other, and so do x and y.
      if (!key.matches("emitter\\..\\.[xy]")
          && !key.equals("scene.lengthMs")
          && !key.equals("periodMs")
          && !key.endsWith(".least")
          && !key.matches("type\\.(fail|min)Volts")) {
        taken(of, amount.max(), maybe);
      }
      refused(of, amount.max().add(BigDecimal.ONE), maybe);
    } else if (kind instanceof Kind.Whole whole) {
      taken(of, whole.min(), maybe);
      taken(of, whole.max(), maybe);
      refused(of, whole.min() - 1, maybe);
      refused(of, whole.max() + 1, maybe);
    }
  }

  @SuppressWarnings("unchecked")
  private static <R, V> void taken(Case<R, V> of, Object value, boolean maybe) {
    V wanted = (V) (maybe ? Optional.of(value) : value);
    assertThatCode(() -> of.setting().set().apply(of.record(), wanted))
        .as(of + " " + value)
        .doesNotThrowAnyException();
  }

  @SuppressWarnings("unchecked")
  private static <R, V> void refused(Case<R, V> of, Object value, boolean maybe) {
    V wanted = (V) (maybe ? Optional.of(value) : value);
    assertThatThrownBy(() -> of.setting().set().apply(of.record(), wanted))
        .as(of + " " + value)
        .isInstanceOf(InvalidModelException.class);
  }

  @ParameterizedTest
  @MethodSource("settings")
  <R, V> void everyChoiceHasANameAndIsTaken(Case<R, V> of) {
    if (of.setting().kind() instanceof Kind.Choice<V> choice) {
      for (V value : choice.values()) {
        R changed = of.setting().set().apply(of.record(), value);
        assertThat(of.setting().get().apply(changed)).isEqualTo(value);
      }
    }
  }

  @Test
  void sharesAndPhasesArePercentagesInForms() {
    Pattern flash = Patterns.fresh("flash", new Look(Colour.WHITE, 0.35));
    Setting<Pattern, BigDecimal> level = amount(PatternSettings.look(), "level");
    Setting<Pattern, BigDecimal> phase = amount(PatternSettings.of(flash), "phase");

    assertThat(level.get().apply(flash)).isEqualByComparingTo("35");
    assertThat(level.kind()).isEqualTo(new Kind.Amount("percent", of(0), of(100), of(5)));
    assertThat(level.set().apply(flash, new BigDecimal("12.5")).look().level()).isEqualTo(0.125);
    assertThat(phase.set().apply(flash, new BigDecimal("33.3")).startPhase().orElseThrow())
        .isEqualByComparingTo("0.333");
  }

  private static BigDecimal of(int value) {
    return BigDecimal.valueOf(value);
  }

  @SuppressWarnings("unchecked") // the kind of these is a number
  private static <R> Setting<R, BigDecimal> amount(List<Setting<R, ?>> settings, String key) {
    return (Setting<R, BigDecimal>)
        settings.stream().filter(s -> s.key().equals(key)).findFirst().orElseThrow();
  }
}
