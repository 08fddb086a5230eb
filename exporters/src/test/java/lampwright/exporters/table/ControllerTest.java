package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ControllerTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1|0.1 % of 8192 bytes of flash",
        "4096|50.0 % of 8192 bytes of flash",
        "8191|100.0 % of 8192 bytes of flash",
        "8192|100.0 % of 8192 bytes of flash",
        "8193|100.1 % of 8192 bytes of flash, does not fit",
        "1000000000000|12207031250.0 % of 8192 bytes of flash, does not fit",
      })
  void shareIsRoundedUp(long bytes, String share) {
    assertThat(new Controller("ATtiny85", 8192).share(bytes)).isEqualTo(share);
  }
}
