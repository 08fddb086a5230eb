package lampwright.app;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NothingOnStandardErrorTest {
  @Test
  void findsExceptionsAndStylesThatCouldNotBeApplied() {
    assertThat(NothingOnStandardError.trouble("Exception in thread \"x\" java.lang.Error: no"))
        .isNotEmpty();
    assertThat(NothingOnStandardError.trouble("java.util.concurrent.RejectedExecutionException"))
        .isNotEmpty();
    assertThat(NothingOnStandardError.trouble("\tat java.base/java.lang.Thread.run(Thread.java:1)"))
        .isNotEmpty();
    assertThat(
            NothingOnStandardError.trouble(
                "javafx.scene.CssStyleHelper calculateValue\nWARNING: Caught"))
        .isNotEmpty();
    assertThat(NothingOnStandardError.trouble("WARNING: Unsupported JavaFX configuration"))
        .isEmpty();
  }
}
