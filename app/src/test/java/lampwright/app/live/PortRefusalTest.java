package lampwright.app.live;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PortRefusalTest {
  /** Linux: errno-base.h and errno.h; Windows: "System Error Codes (0-499)". Both from memory. */
  @ParameterizedTest
  @CsvSource({
    "false, 2, MISSING",
    "false, 6, MISSING",
    "false, 19, MISSING",
    "false, 13, NO_PERMISSION",
    "false, 1, NO_PERMISSION",
    "false, 16, BUSY",
    "false, 11, BUSY",
    "false, 25, NO_SERIAL_PORT",
    "false, 5, OTHER",
    "true, 2, MISSING",
    "true, 5, BUSY",
    "true, 13, OTHER"
  })
  void numbersOfTheSystemHaveTheirMeaning(boolean windows, int code, PortRefusal meaning) {
    assertThat(PortRefusal.of(windows, code)).isEqualTo(meaning);
  }
}
