package lampwright.app.workshop.model.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.Slot;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class CueSettingsModelTest {
  private static final CueRef LEFT = new CueRef(0, 0);
  private static final CueRef RIGHT = new CueRef(1, 0);

  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final Bench bench = new Bench(Projects4Tests.sample("recovery-tractor"));
  private final LightService lights = new LightService(bench, screen::add);
  private final CueSettingsModel model = new CueSettingsModel(bench, lights);

  @AfterEach
  void close() {
    lights.close();
  }

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

  private void choose(CueRef... refs) {
    bench.select(bench.selection().withCues(List.of(refs)));
  }

  private Cue cue(CueRef ref) {
    return ref.in(bench.scene().orElseThrow()).orElseThrow();
  }

  @Test
  void noCueHasNoSheet() {
    assertThat(model.formProperty().get()).isEmpty();
  }

  @Test
  void valuesFollowTheProjectOnTheSameSheet() {
    choose(LEFT);
    Form form = model.formProperty().get().orElseThrow();
    Slot<BigDecimal> rate = slot("perMinute");
    assertThat(rate.value()).isEqualByComparingTo("150");
    rate.set(new BigDecimal("96"));
    assertThat(((RotatingBeacon) cue(LEFT).pattern()).perMinute()).isEqualByComparingTo("96");
    assertThat(bench.undoNameProperty().get()).contains("Change rate");
    bench.undo();
    assertThat(rate.value()).isEqualByComparingTo("150");
    assertThat(model.formProperty().get()).containsSame(form);
  }

  @Test
  void scrubbedValueIsUndoneAsOneStep() {
    choose(LEFT);
    Project before = bench.project();
    Object drag = new Object();
    Slot<BigDecimal> level = slot("level");
    for (String value : new String[] {"90", "80", "70"}) {
      level.set(new BigDecimal(value), Optional.of(drag));
    }
    bench.undo();
    assertThat(bench.project()).isEqualTo(before);
  }

  @Test
  void anotherKindKeepsColourLevelAndPhase() {
    choose(LEFT);
    this.<BigDecimal>slot("phase").set(new BigDecimal("25"));
    this.<String>slot("kind").set("indicator");
    assertThat(cue(LEFT).pattern().kind()).isEqualTo("indicator");
    assertThat(cue(LEFT).pattern().look().colour())
        .isEqualTo(new Colour.Signal(SignalColour.AMBER));
    assertThat(cue(LEFT).pattern().startPhase()).contains(new BigDecimal("0.25"));
    for (String kind : Patterns.kinds()) {
      this.<String>slot("kind").set(kind);
      assertThat(cue(LEFT).pattern().kind()).isEqualTo(kind);
    }
  }

  /** Issue 13: pickers of colours that light nothing; which kinds have one is DESIGN.md's table. */
  @Test
  void colourIsInTheFormOfAPatternThatHasOneAlone() {
    choose(LEFT);
    for (String kind : Patterns.kinds()) {
      this.<String>slot("kind").set(kind);
      // A new fade and new keyframes have no colours of their own yet, so theirs is the cue's.
      boolean without = List.of("colour-cycle", "tint", "test-walk").contains(kind);
      List<String> keys =
          model.formProperty().get().orElseThrow().groups().stream()
              .flatMap(group -> group.slots().stream())
              .map(Slot::key)
              .toList();
      assertThat(keys.contains("colour")).as(kind).isEqualTo(!without);
    }
  }

  @Test
  void severalCuesChangeTogether() {
    choose(RIGHT, LEFT);
    assertThat(model.summaryProperty().get()).startsWith("2 cues are selected");
    this.<BigDecimal>slot("beamDegrees").set(new BigDecimal("90"));
    assertThat(((RotatingBeacon) cue(LEFT).pattern()).beamDegrees()).isEqualTo(90);
    assertThat(((RotatingBeacon) cue(RIGHT).pattern()).beamDegrees()).isEqualTo(90);
    // Of two kinds only what both have is shown.
    choose(LEFT, new CueRef(2, 0));
    assertThat(model.formProperty().get().orElseThrow().groups())
        .extracting(Form.Group::key)
        .containsExactly("light", "time");
  }

  @Test
  void phasesAreSharedOutEvenly() {
    choose(RIGHT);
    this.<BigDecimal>slot("phase").set(new BigDecimal("10"));
    choose(LEFT, RIGHT);
    model.shareOutPhases();
    assertThat(cue(LEFT).pattern().startPhase().orElseThrow()).isZero();
    assertThat(cue(RIGHT).pattern().startPhase().orElseThrow()).isEqualByComparingTo("0.5");
    assertThat(bench.undoNameProperty().get()).contains("Spread phases evenly");
  }

  @Test
  void refusedValueSaysWhyAndChangesNothing() {
    choose(LEFT);
    Project before = bench.project();
    Slot<BigDecimal> length = slot("lengthMs");
    assertThat(length.set(BigDecimal.ZERO)).isFalse();
    assertThat(length.refusalProperty().get())
        .contains("duration: 0: must be between 1 and 86,400,000");
    assertThat(bench.project()).isEqualTo(before);
  }

  @Test
  void rateThatNoRealLampHasIsMendedByAHint() throws InterruptedException {
    choose(LEFT);
    this.<BigDecimal>slot("perMinute").set(new BigDecimal("300"));
    while (lights.measuringProperty().get()) {
      Runnable next = screen.poll(5, TimeUnit.MINUTES);
      assertThat(next).isNotNull();
      next.run();
    }
    assertThat(model.hintProperty().get()).contains(": 300 flashes/min, faster than a real");
    assertThat(model.likeRealProperty().get().orElseThrow()).isEqualByComparingTo("240");
    model.setLikeReal();
    assertThat(((RotatingBeacon) cue(LEFT).pattern()).perMinute()).isEqualByComparingTo("240");
  }

  @Test
  void swatchesShowWhatTheEmittersMake() {
    Lamp lamp = bench.project().rig().lamps().get(0);
    PixelLook look = PixelLook.of(bench.project().rig(), lamp);
    // IEC 61966-2-1: pure sRGB red has no green and no blue; a red emitter is outside of sRGB.
    int red = look.argb(new Colour.Drive(1, 0, 0, 0));
    assertThat(red >> 16 & 0xFF).isEqualTo(255);
    assertThat(red & 0xFF).isLessThan(90);
    assertThat(look.argb(new Colour.Drive(0, 0, 0, 0))).isEqualTo(0xFF000000);
    assertThat(PixelLook.requested(new Colour.Srgb(1, 2, 3))).isEqualTo(0xFF010203);
    int warm = PixelLook.requested(new Colour.Kelvin(2000));
    assertThat(warm >> 16 & 0xFF).isGreaterThan(warm & 0xFF);
    assertThat(look.explain(new Colour.Kelvin(3000)).orElseThrow().reachesTarget()).isTrue();
  }
}
