package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A regression: two emitters that are both full at the best mix came out an ulp apart. */
class FullDriveTest {
  @Test
  void emittersThatAreBothFullAreBothExactlyFull() {
    double[] drives = new double[4];
    new MatchedMixer(Packages.fitted(Packages.bench()))
        .mix(new Colour.Kelvin(4000))
        .write(1, drives, 0);
    // Red and white are full at 4,000 K by the linear programme of a general solver.
    assertThat(drives[0]).isEqualTo(1);
    assertThat(drives[3]).isEqualTo(1);
  }
}
