package lampwright.app.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.model.ribbon.Strip;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import lampwright.engine.render.FrameStore;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What ribbons, drawing and swatches paint has the hue of the emitters' own light. That is computed
 * here by hand: CIE XYZ of each emitter from its chromaticity and intensity (CIE 15: X = Y x / y, Z
 * = Y (1 - x - y) / y), added up; linear sRGB by the four-digit matrix of IEC 61966-2-1, not
 * clipped; hue by the hexcone (A. R. Smith, Color Gamut Transform Pairs, 1978) of linear light.
 */
class PaintedHueTest {
  private static final double MOST_DEGREES = 3;

  record Case(PixelType type, String name, Colour.Drive drive) {
    @Override
    public String toString() {
      return type.id() + " " + name;
    }
  }

  static List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (PixelType type : BuiltInPixelTypes.all()) {
      double white = type.emitters().containsKey(EmitterKind.WHITE) ? 1 : 0;
      cases.add(new Case(type, "red", new Colour.Drive(1, 0, 0, 0)));
      cases.add(new Case(type, "green", new Colour.Drive(0, 1, 0, 0)));
      cases.add(new Case(type, "blue", new Colour.Drive(0, 0, 1, 0)));
      cases.add(new Case(type, "white", new Colour.Drive(1, 1, 1, white)));
      cases.add(new Case(type, "amber", new Colour.Drive(1, 0.25, 0, 0)));
    }
    return cases;
  }

  @ParameterizedTest
  @MethodSource("cases")
  void hueIsTheEmittersOwn(Case each) {
    Rig rig =
        Rig.of(
            List.of(new Chain("c", each.type(), 1)),
            List.of(),
            List.of(Lamp.ofPixels("lamp", new PixelRun("c", 0, 1))));
    double own = hue(linear(rig.chains().get(0).emitters(), each.drive()));
    int swatch = PixelLook.of(rig, rig.lamps().get(0)).argb(each.drive());
    assertThat(apart(own, hue(decoded(swatch)))).as("swatch").isLessThan(MOST_DEGREES);

    Scene scene =
        Scene.TRACKS.with(
            Projects.emptyScene("work", 1000),
            List.of(
                Track.of(List.of("lamp"), Cue.of(0, 1000, new Steady(new Look(each.drive(), 1))))));
    FrameStore store = new FrameStore(FrameTable.of(rig, scene));
    store.render(() -> {});
    SceneLight light = SceneLight.of(store);
    int ribbon =
        Strip.paint(light, new TimeAxis(0, 100), 10, List.of(List.of(0)), new boolean[] {false})[0]
            .stripes()
            .get(0)
            .argb(5);
    assertThat(apart(own, hue(decoded(ribbon)))).as("ribbon").isLessThan(MOST_DEGREES);

    byte[] frame = new byte[store.table().layout().bytes()];
    store.read(0, frame);
    for (float exposure : new float[] {1, 4, 16}) {
      float[] rgb = new float[3];
      light.screen().addPixel(frame, 0, 0, rgb, 0);
      Glow.limit(rgb, 0, exposure, Float.MAX_VALUE);
      int lamp = Glow.over(new float[3], 0, rgb[0], rgb[1], rgb[2]);
      assertThat(apart(own, hue(decoded(lamp)))).as("lamp x" + exposure).isLessThan(MOST_DEGREES);
    }
    assertThat(BigDecimal.valueOf(own)).isBetween(BigDecimal.ZERO, BigDecimal.valueOf(360));
  }

  private static double[] linear(Map<EmitterKind, Emitter> emitters, Colour.Drive drive) {
    double[] drives = {drive.r(), drive.g(), drive.b(), drive.w()};
    double cieX = 0;
    double cieY = 0;
    double cieZ = 0;
    for (Map.Entry<EmitterKind, Emitter> each : emitters.entrySet()) {
      double x = each.getValue().chromaticity().x();
      double y = each.getValue().chromaticity().y();
      double luminance = each.getValue().millicandela() * drives[each.getKey().slot()];
      cieX += luminance * x / y;
      cieY += luminance;
      cieZ += luminance * (1 - x - y) / y;
    }
    return new double[] {
      3.2406 * cieX - 1.5372 * cieY - 0.4986 * cieZ,
      -0.9689 * cieX + 1.8758 * cieY + 0.0415 * cieZ,
      0.0557 * cieX - 0.2040 * cieY + 1.0570 * cieZ
    };
  }

  private static double[] decoded(int argb) {
    double[] rgb = new double[3];
    for (int i = 0; i < 3; i++) {
      double code = ((argb >> (16 - 8 * i)) & 0xFF) / 255.0;
      rgb[i] = code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }
    return rgb;
  }

  private static double hue(double[] rgb) {
    double most = Math.max(rgb[0], Math.max(rgb[1], rgb[2]));
    double chroma = most - Math.min(rgb[0], Math.min(rgb[1], rgb[2]));
    double sixths;
    if (most == rgb[0]) {
      sixths = (rgb[1] - rgb[2]) / chroma;
    } else if (most == rgb[1]) {
      sixths = (rgb[2] - rgb[0]) / chroma + 2;
    } else {
      sixths = (rgb[0] - rgb[1]) / chroma + 4;
    }
    return (60 * sixths + 360) % 360;
  }

  private static double apart(double a, double b) {
    double apart = Math.abs(a - b) % 360;
    return Math.min(apart, 360 - apart);
  }
}
