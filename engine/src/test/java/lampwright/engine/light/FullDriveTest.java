package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** A regression: two emitters that are both full at the best mix came out an ulp apart. */
class FullDriveTest {
  @Test
  void emittersThatAreBothFullAreBothExactlyFull() {
    Map<EmitterKind, Emitter> bench =
        Map.of(
            EmitterKind.RED,
            new Emitter(new Chromaticity(0.700, 0.299), 405),
            EmitterKind.GREEN,
            new Emitter(new Chromaticity(0.170, 0.700), 690),
            EmitterKind.BLUE,
            new Emitter(new Chromaticity(0.136, 0.050), 190),
            EmitterKind.WHITE,
            new Emitter(new Chromaticity(0.3451, 0.3516), 2000));
    double[] drives = new double[4];
    new MatchedMixer(bench).mix(new Colour.Kelvin(4000), drives, 0);
    // Red and white are full at 4,000 K by the linear programme of a general solver.
    assertThat(drives[0]).isEqualTo(1);
    assertThat(drives[3]).isEqualTo(1);
  }
}
