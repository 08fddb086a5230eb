package lampwright.app.workshop.model.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.ProjectColours;
import lampwright.app.workshop.edit.Projects;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Colour;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.pattern.Steady;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.words.ColourWords;
import org.junit.jupiter.api.Test;

class ColourReachTest {
  /**
   * Against the triangle of the emitters: the chromaticity of each cell by hand (hexcone, IEC
   * 61966-2-1), and on which side of the triangle's sides it is. Near a side either is allowed: a
   * difference of 0.005 in CIE 1976 u'v' is not visible.
   */
  @Test
  void cellsOutsideTheTriangleOfTheEmittersAreNotReached() {
    Chain chain = new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 1);
    Rig rig =
        Rig.of(List.of(chain), List.of(), List.of(Lamp.ofPixels("a", new PixelRun("c", 0, 1))));
    ColourReach reach = ColourReach.of(PixelLook.of(rig, rig.lamps().get(0)));
    double[] red = uv(chain.emitters().get(EmitterKind.RED).chromaticity());
    double[] green = uv(chain.emitters().get(EmitterKind.GREEN).chromaticity());
    double[] blue = uv(chain.emitters().get(EmitterKind.BLUE).chromaticity());
    int outside = 0;
    for (int step = 0; step < ColourReach.STEPS; step++) {
      for (int hue = 0; hue < ColourReach.HUES; hue++) {
        double[] at = uv(360.0 * hue / ColourReach.HUES, 1 - step / (ColourReach.STEPS - 1.0));
        double distance =
            Math.min(side(red, green, at), Math.min(side(green, blue, at), side(blue, red, at)));
        if (distance > 0.001) {
          assertThat(reach.reached(hue, step)).as(hue + ", " + step).isTrue();
        } else if (distance < -0.006) {
          outside++;
          assertThat(reach.reached(hue, step)).as(hue + ", " + step).isFalse();
        }
        assertThat(reach.argb(hue, step) >>> 24).isEqualTo(0xFF);
      }
    }
    assertThat(outside).isLessThan(ColourReach.HUES * ColourReach.STEPS / 2);
  }

  // The distance from a side of the triangle, above 0 inside.
  private static double side(double[] from, double[] to, double[] at) {
    double du = to[0] - from[0];
    double dv = to[1] - from[1];
    double cross = du * (at[1] - from[1]) - dv * (at[0] - from[0]);
    return cross / Math.hypot(du, dv);
  }

  private static double[] uv(Chromaticity c) {
    double sum = -2 * c.x() + 12 * c.y() + 3;
    return new double[] {4 * c.x() / sum, 9 * c.y() / sum};
  }

  private static double[] uv(double degrees, double saturation) {
    double[] rgb = new double[3];
    for (int i = 0; i < 3; i++) {
      double k = ((i == 0 ? 5 : i == 1 ? 3 : 1) + degrees / 60) % 6;
      double code = 1 - saturation * Math.max(0, Math.min(1, Math.min(k, 4 - k)));
      rgb[i] = code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }
    double x = 0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2];
    double y = 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    double z = 0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2];
    double sum = x + 15 * y + 3 * z;
    return new double[] {4 * x / sum, 9 * y / sum};
  }

  @Test
  void aPlaceOfTheFieldIsItsHueAndSaturation() {
    assertThat(ColourReach.at(0, 0)).isEqualTo(new Colour.Hue(0, 1));
    assertThat(ColourReach.at(0.5, 0.25)).isEqualTo(new Colour.Hue(180, 0.75));
    assertThat(ColourReach.at(2, 2)).isEqualTo(new Colour.Hue(359, 0));
    assertThat(ColourReach.at(-1, -1)).isEqualTo(new Colour.Hue(0, 1));
  }

  @Test
  void coloursOfAProjectAreThoseUsedMostFirst() {
    Colour red = new Colour.Srgb(255, 0, 0);
    Colour amber = new Colour.Signal(SignalColour.AMBER);
    Scene scene =
        Scene.TRACKS.with(
            Projects.emptyScene("work", 4000),
            List.of(
                Track.of(
                    List.of("roof"),
                    Cue.of(0, 1000, new Steady(new Look(red, 1))),
                    Cue.of(1000, 1000, new Steady(new Look(amber, 1))),
                    Cue.of(2000, 1000, Patterns.fresh(ColourCycle.SHAPE.key(), Look.DEFAULT))),
                Track.of(List.of("roof"), Cue.of(500, 1000, new Steady(new Look(amber, 0.5))))));
    var project = Projects4Tests.small();
    assertThat(ProjectColours.of(Projects.inScene(project, "work", s -> scene)))
        .containsExactly(amber, red);
    assertThat(at(scene, "499.999")).contains(red);
    assertThat(at(scene, "500")).contains(amber);
    assertThat(at(scene, "2000")).isEmpty();
    assertThat(at(scene, "3000")).isEmpty();
  }

  private static java.util.Optional<Colour> at(Scene scene, String ms) {
    return ProjectColours.at(scene, "roof", new BigDecimal(ms));
  }

  @Test
  void coloursAreSaidAsTheyAreGiven() {
    assertThat(ColourWords.of(new Colour.Srgb(255, 160, 0))).isEqualTo("#FFA000");
    assertThat(ColourWords.of(new Colour.Hue(30, 0.5))).isEqualTo("hue 30\u00b0, 50\u00a0%");
    assertThat(ColourWords.of(new Colour.Kelvin(3000))).isEqualTo("3000\u00a0K");
    assertThat(ColourWords.of(new Colour.Signal(SignalColour.AMBER))).isEqualTo("signal amber");
    assertThat(ColourWords.of(new Colour.Drive(1, 0.5, 0, 0)))
        .isEqualTo("drive 100, 50, 0, 0\u00a0%");
  }
}
