package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import lampwright.engine.rig.Controller;
import lampwright.exporters.target.Target;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlashShareTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1|0.1 % of 8192 bytes of free flash",
        "4096|50.0 % of 8192 bytes of free flash",
        "8191|100.0 % of 8192 bytes of free flash",
        "8192|100.0 % of 8192 bytes of free flash",
        "8193|100.1 % of 8192 bytes of free flash, does not fit",
        "1000000000000|12207031250.0 % of 8192 bytes of free flash, does not fit",
      })
  void shareIsRoundedUp(long bytes, String share) {
    Target small = Target.of(Controller.find("attiny85").orElseThrow());
    assertThat(FlashShare.words(small, bytes)).isEqualTo(share);
  }
}
