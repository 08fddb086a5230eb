package lampwright.exporters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.opentest4j.AssertionFailedError;
import org.opentest4j.TestAbortedException;

class OutsideToolsTest {
  private final List<String> said = new ArrayList<>();

  @TempDir Path folder;

  @Test
  void missingToolLeavesTheTestOutAndNamesItsPackage() {
    OutsideTools tools = new OutsideTools(List.of(folder), false, said::add);
    assertThatThrownBy(() -> tools.find("srec_cat", "srecord"))
        .isInstanceOf(TestAbortedException.class)
        .hasMessageContaining(
            "left out: srec_cat is not installed; the Debian package srecord brings it");
  }

  @Test
  void missingToolIsReportedOnce() {
    OutsideTools tools = new OutsideTools(List.of(folder), false, said::add);
    for (int i = 0; i < 2; i++) {
      assertThatThrownBy(() -> tools.find("avr-gcc", "gcc-avr"))
          .isInstanceOf(TestAbortedException.class);
    }
    assertThat(said)
        .containsExactly(
            "Tests left out: avr-gcc is not installed; the Debian package gcc-avr brings it.");
  }

  @Test
  void missingToolFailsTheTestWhereToolsAreRequired() {
    OutsideTools tools = new OutsideTools(List.of(folder), true, said::add);
    assertThatThrownBy(() -> tools.find("srec_cat", "srecord"))
        .isInstanceOf(AssertionFailedError.class)
        .hasMessage(
            "srec_cat is not installed; the Debian package srecord brings it,"
                + " and LAMPWRIGHT_REQUIRE_TOOLS=1 asks for it");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void missingHeaderNamesItsPackage() throws Exception {
    script("some-gcc", "exit 1");
    OutsideTools tools = new OutsideTools(List.of(folder), false, said::add);
    assertThatThrownBy(() -> tools.findCompiler("some-gcc", "gcc-some", "some/io.h", "some-libc"))
        .isInstanceOf(TestAbortedException.class)
        .hasMessageContaining(
            "<some/io.h> for some-gcc is not installed; the Debian package some-libc brings it");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void resultCarriesOutputErrorsAndExit() throws Exception {
    script("speaker", "echo \"$1\"; echo bad >&2; exit 3");
    OutsideTools.Result result =
        new OutsideTools(List.of(folder), true, said::add)
            .find("speaker", "none")
            .run(folder, "good");
    assertThat(new String(result.out(), StandardCharsets.US_ASCII)).isEqualTo("good\n");
    assertThat(result.errors()).isEqualTo("bad\n");
    assertThat(result.exit()).isEqualTo(3);
  }

  private void script(String name, String body) throws Exception {
    Path script = Files.writeString(folder.resolve(name), "#!/bin/sh\n" + body + "\n");
    Files.setPosixFilePermissions(script, PosixFilePermissions.fromString("rwx------"));
  }
}
