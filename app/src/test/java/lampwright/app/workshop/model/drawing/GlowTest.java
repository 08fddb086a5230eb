package lampwright.app.workshop.model.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwright.app.picture.Dots;
import lampwright.app.picture.Glow;
import lampwright.app.picture.Sides;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.ScreenLight;
import org.junit.jupiter.api.Test;

class GlowTest {
  private static final int SIDE = 64;

  private final FrameLayout layout = new FrameLayout(Projects4Tests.small().rig());
  private final ScreenLight screen = ScreenLight.of(layout);

  private static int[] grey(int code) {
    int[] argb = new int[SIDE * SIDE];
    Arrays.fill(argb, 0xFF000000 | code << 16 | code << 8 | code);
    return argb;
  }

  private static byte[] white() {
    byte[] frame = new byte[9];
    frame[3] = (byte) 128;
    return frame;
  }

  @Test
  void darkLampLeavesTheBackgroundAsItIs() {
    Glow glow = new Glow(SIDE, SIDE, grey(100));
    glow.paint(screen, new byte[9], List.of(new Dots.Dot(0, 0, 32, 32, 6)), 1, Float.MAX_VALUE);
    for (int argb : glow.argb()) {
      assertThat(argb & 0xFF).isCloseTo(100, within(1));
    }
  }

  @Test
  void lightIsAddedInLinearLight() {
    List<Dots.Dot> dots = List.of(new Dots.Dot(0, 0, 32, 32, 6));
    float[] light = new float[3];
    screen.addPixel(white(), 0, 0, light, 0);
    Glow glow = new Glow(SIDE, SIDE, grey(100));
    glow.paint(screen, white(), dots, 0.5f, Float.MAX_VALUE);
    // IEC 61966-2-1 of code 100: ((100/255 + 0.055) / 1.055)^2.4 = 0.1274.
    double most = 0.5 * Math.max(light[0], Math.max(light[1], light[2]));
    double expected = 0.1274 * Math.max(0, 1 - most) + 0.5 * light[1];
    double code = 255 * (1.055 * Math.pow(Math.min(1, expected), 1 / 2.4) - 0.055);
    int middle = glow.argb()[32 * SIDE + 32] >> 8 & 0xFF;
    assertThat((double) middle).isCloseTo(code, within(2.0));
  }

  /** The meter reads the light before it is held to a dimmed preview. */
  @Test
  void brightestDotIsThatOfTheFrameExposedAndNotDimmed() {
    float[] light = new float[3];
    screen.addPixel(white(), 0, 0, light, 0);
    double one = Math.max(light[0], Math.max(light[1], light[2]));
    List<Dots.Dot> dots = List.of(new Dots.Dot(0, 0, 32, 32, 6), new Dots.Dot(0, 1, 10, 10, 6));
    Glow glow = new Glow(SIDE, SIDE, grey(0));
    glow.paint(screen, white(), dots, 4, 0.06f);
    assertThat((double) glow.brightest()).isCloseTo(4 * one, within(1e-4));
    glow.paint(screen, new byte[9], dots, 4, 0.06f);
    assertThat(glow.brightest()).isZero();
  }

  @Test
  void everyViewHasItsOwnExposureAndMeter() {
    Bench bench = new Bench(Projects4Tests.small());
    DrawingSheet sheet = new DrawingSheet();
    Exposures exposures = new Exposures(bench, sheet);
    sheet.viewProperty().set(View.SIDE);
    assertThat(exposures.meterProperty().get().share()).isEmpty();
    exposures.byMeter();
    assertThat(exposures.factor()).isEqualTo(1);
    exposures.painted(View.SIDE, 0.1, 1);
    exposures.painted(View.SIDE, 0.05, 1);
    // Painted for another view, before the view changed.
    exposures.painted(View.REAR, 3, 1);
    assertThat(exposures.meterProperty().get().share().orElseThrow()).isEqualTo(0.05);
    assertThat(exposures.meterProperty().get().mark().orElseThrow()).isEqualTo(0.1);
    exposures.byMeter();
    // Eight times a tenth is the most that is not above white.
    assertThat(exposures.factor()).isEqualTo(8);
    assertThat(exposures.meterProperty().get().mark().orElseThrow()).isCloseTo(0.8, within(1e-6));
    exposures.step(1);
    assertThat(exposures.meterProperty().get().state()).isEqualTo(Gauge.State.OVER);
    exposures.step(9);
    assertThat(exposures.factor()).isEqualTo(16);
    sheet.viewProperty().set(View.REAR);
    assertThat(exposures.factor()).isEqualTo(1);
    exposures.painted(View.REAR, 6, 1);
    exposures.byMeter();
    assertThat(exposures.factor()).isEqualTo(0.25f);
    sheet.viewProperty().set(View.SIDE);
    assertThat(exposures.factor()).isEqualTo(16);
    assertThat(exposures.meterProperty().get().share()).isEmpty();
  }

  @Test
  void fullestSideIsThatWithTheMostLamps() {
    List<Lamp> lamps = Projects4Tests.small().rig().lamps();
    Lamp rear = Lamp.PLACE.with(lamps.get(0), Optional.of(new Place(View.REAR, 0.5, 0.5, 0.1)));
    assertThat(Sides.fullest(List.of(lamps.get(1), rear))).isEqualTo(View.REAR);
    assertThat(Sides.fullest(List.of(rear), View.SIDE)).isEqualTo(View.REAR);
    assertThat(Sides.fullest(List.of(rear), View.REAR)).isEqualTo(View.REAR);
    assertThat(Sides.fullest(List.of())).isEqualTo(View.FRONT);
  }

  @Test
  void haloFadesToNothing() {
    List<Dots.Dot> dots = List.of(new Dots.Dot(0, 0, 32, 32, 6));
    Glow glow = new Glow(SIDE, SIDE, grey(0));
    glow.paint(screen, white(), dots, 1, Float.MAX_VALUE);
    int before = 255;
    for (int x = 32; x < 52; x++) {
      int now = glow.argb()[32 * SIDE + x] >> 8 & 0xFF;
      assertThat(now).isLessThanOrEqualTo(before);
      before = now;
    }
    assertThat(glow.argb()[32 * SIDE + 51] & 0xFFFFFF).isZero();
    assertThat(glow.argb()[0] & 0xFFFFFF).isZero();
  }

  @Test
  void lampThatGoesDarkIsGoneFromTheNextPicture() {
    List<Dots.Dot> dots = List.of(new Dots.Dot(0, 0, 3, 3, 6), new Dots.Dot(0, 1, 60, 62, 2));
    Glow glow = new Glow(SIDE, SIDE, grey(20));
    glow.paint(screen, new byte[9], dots, 1, Float.MAX_VALUE);
    int[] dark = glow.argb().clone();
    glow.paint(screen, white(), dots, 1, Float.MAX_VALUE);
    assertThat(glow.argb()).isNotEqualTo(dark);
    glow.paint(screen, new byte[9], dots, 1, Float.MAX_VALUE);
    assertThat(glow.argb()).isEqualTo(dark);
  }

  // W3C WCAG 2.2: a flash needs a change of a tenth of the greatest luminance.
  @Test
  void dimmedLightIsBelowTheTenthThatMakesAFlash() {
    List<Dots.Dot> dots = List.of(new Dots.Dot(0, 0, 32, 32, 8));
    byte[] full = new byte[9];
    Arrays.fill(full, (byte) 255);
    Glow glow = new Glow(SIDE, SIDE, grey(0));
    glow.paint(screen, full, dots, 16, Glow.DIMMED_MOST);
    // Code 89 is 0.1 in linear light.
    for (int argb : glow.argb()) {
      assertThat(argb >> 16 & 0xFF).isLessThan(89);
      assertThat(argb >> 8 & 0xFF).isLessThan(89);
      assertThat(argb & 0xFF).isLessThan(89);
    }
  }

  @Test
  void pixelsOfALampStandWithinItsSize() {
    Lamp lamp =
        Lamp.PLACE.with(
            Projects4Tests.small().rig().lamps().get(0),
            Optional.of(new Place(View.TOP, 0.5, 0.5, 0.2)));
    Dots.Frame frame = new Dots.Frame(10, 20, 400, 200);
    for (int count : new int[] {1, 2, 3, 8, 60}) {
      List<Dots.Dot> dots = Dots.of(List.of(lamp), i -> count, View.TOP, frame);
      assertThat(dots).hasSize(count);
      for (Dots.Dot dot : dots) {
        double far = Math.hypot(dot.x() - 210, dot.y() - 120) + dot.radius();
        assertThat(far).isLessThanOrEqualTo(40.5);
      }
    }
    assertThat(Dots.of(List.of(lamp), i -> 3, View.SIDE, frame)).isEmpty();
  }

  @Test
  void drawingKeepsItsShapeInAnyPane() {
    Dots.Frame wide = Dots.Frame.within(1000, 300, 2, 10);
    assertThat(wide.width() / wide.height()).isCloseTo(2, within(1e-9));
    assertThat(wide.height()).isEqualTo(280);
    Dots.Frame high = Dots.Frame.within(100, 900, 2, 10);
    assertThat(high.width()).isEqualTo(80);
  }

  @Test
  void lampsAreFoundMovedAndTakenOff() {
    Bench bench = new Bench(Projects4Tests.small());
    try (LightService lights = new LightService(bench, Runnable::run)) {
      DrawingModel model =
          new DrawingModel(
              bench,
              lights,
              new Playhead(bench),
              new DrawingSheet(),
              new PixelExplainer(bench, work -> {}));
      Dots.Frame frame = new Dots.Frame(0, 0, 200, 100);
      assertThat(model.unplaced()).hasSize(2);
      model.choose("roof", false);
      assertThat(model.waiting()).isPresent();
      model.put("roof", 0.5, 0.5);
      assertThat(model.at(frame, 103, 52).map(Lamp::id)).contains("roof");
      assertThat(model.at(frame, 150, 52)).isEmpty();
      model.nudge(0.1, -0.2);
      assertThat(model.at(frame, 120, 30)).isPresent();
      model.resize(2);
      assertThat(model.words())
          .isEqualTo("roof, side view, 60\u00a0% from left, 30\u00a0% from top");
      model.takeOff();
      assertThat(model.drawn()).isEmpty();
      bench.undo();
      bench.undo();
      bench.undo();
      bench.undo();
      assertThat(bench.project()).isEqualTo(Projects4Tests.small());
    }
  }

  @Test
  void whatIsUnderThePointerStaysThereWhenTheDrawingIsLookedAtNearer() {
    Dots.Frame whole = Dots.Frame.within(400, 300, 2, 20);
    Dots.Frame near = Sight.WHOLE.zoomed(4, whole, 100, 140, 400, 300).of(whole, 400, 300);
    assertThat(near.width()).isEqualTo(4 * whole.width());
    double share = (100 - whole.x()) / whole.width();
    assertThat(near.x() + share * near.width()).isCloseTo(100, within(1e-9));
    Sight far = new Sight(4, 0.3, 0.3).zoomed(0.01, near, 10, 10, 400, 300);
    assertThat(far).isEqualTo(Sight.WHOLE);
    assertThat(far.of(whole, 400, 300)).isEqualTo(whole);
    assertThat(new Sight(1000, -1, 2)).isEqualTo(new Sight(Sight.MOST, 0, 1));
  }
}
