package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HostileInputTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      quoteCharacter = '`',
      value = {
        "``~an empty file at line 1, column 1: must be a JSON object",
        "` `~an empty file at line 1, column 1: must be a JSON object",
        "5~5 (number) at line 1, column 1: must be an object",
        "[]~a list at line 1, column 1: must be an object",
        "\"{}\"~\"{}\" (string) at line 1, column 1: must be an object",
        "null~null at line 1, column 1: must be an object"
      })
  void whatIsNoProjectIsReportedAtItsPlace(String text, String problem) {
    assertThat(texts(text.getBytes(UTF_8))).containsExactly(problem);
  }

  @Test
  void columnsCountCharactersNotBytes() {
    assertThat(texts("{\"lampwright\": 1, \"name\": \"灯台灯台\", \"rig\": 2}".getBytes(UTF_8)))
        .containsExactly("rig: 2 (number) at line 1, column 42: must be an object");
  }

  @Test
  void nestingOf64IsReadAndOf65IsRefused() {
    String open = "{\"lampwright\": 1, \"x\": ";
    String fine = open + "[".repeat(63) + "]".repeat(63) + "}";
    String deep = open + "[".repeat(64) + "]".repeat(64) + "}";

    assertThat(texts(fine.getBytes(UTF_8))).noneMatch(text -> text.contains("nested"));
    assertThat(texts(deep.getBytes(UTF_8)))
        .containsExactly("nested 65 deep at line 1, column 87: must be nested at most 64 deep");
  }

  @Test
  void nestingOfAMillionIsRefusedWithoutOverflow() {
    assertThat(texts("[".repeat(1_000_000).getBytes(UTF_8)))
        .containsExactly("nested 65 deep at line 1, column 65: must be nested at most 64 deep");
  }

  @Test
  void moreThanAMillionValuesAreRefused() {
    assertThat(texts(("[" + "1,".repeat(1_000_000) + "1]").getBytes(UTF_8)))
        .containsExactly(
            "more than 1,000,000 values at line 1, column 2000000: must be at most 1,000,000");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      quoteCharacter = '`',
      value = {"{\"lampwright\": 1, \"name\": \"~\"~a", "{\"~\":1}~b", "{\"lampwright\": ~}~1"})
  void textsAndNumbersOver64KiBAreRefused(String before, String after, String character) {
    String json = before + character.repeat(65_537) + after;

    assertThat(texts(json.getBytes(UTF_8)))
        .singleElement()
        .asString()
        .startsWith("a string or number too long at line 1, column ")
        .endsWith(": must have at most 65,536 characters");
  }

  @Test
  void longTextIsCutInTheMessage() {
    String json = "{\"lampwright\": 1, \"rig\": \"" + "x".repeat(60_000) + "\"}";

    assertThat(texts(json.getBytes(UTF_8)))
        .containsExactly(
            "rig: \"" + "x".repeat(60) + "...\" (string) at line 1, column 26: must be an object");
  }

  @Test
  void numberOf10000DigitsIsRefusedByItsLength() {
    String digits = "9".repeat(10_000);
    String json = "{\"lampwright\": 1, \"rig\": {\"chains\": [{\"pixels\": " + digits + "}]}}";

    assertThat(texts(json.getBytes(UTF_8)))
        .contains(
            "rig.chains[0].pixels: "
                + "9".repeat(40)
                + "... at line 1, column 49: must have at most 400 characters");
  }

  // Building 10^999999999 as digits would take a gigabyte.
  @ParameterizedTest
  @CsvSource({
    "1e400",
    "1e999999999",
    "-1e999999999",
    "1e-999999999",
    "1E+99999999999999999999999",
    "0e-1"
  })
  void hugeExponentsCostNothing(String number) {
    String json =
        "{\"lampwright\": 1, \"rig\": {}, \"scenes\": [{\"id\": \"s\", \"framesPerSecond\": "
            + number
            + ", \"lengthMs\": "
            + number
            + "}]}";

    assertThat(texts(json.getBytes(UTF_8)))
        .contains(
            "scenes[0].lengthMs: "
                + number
                + " at line 1, column "
                + (json.indexOf("lengthMs") + 12)
                + ": must be between 1 and 86,400,000");
  }

  @Test
  void hundredThousandDistinctLampsOfATrackAreRefusedInLinearTime() {
    StringBuilder lamps = new StringBuilder("\"a\"");
    for (int i = 0; i < 100_000; i++) {
      lamps.append(",\"l").append(i).append('"');
    }
    String json =
        "{\"lampwright\": 1, \"rig\": {}, \"scenes\": [{\"id\": \"s\", \"lengthMs\": 1, \"tracks\": "
            + "[{\"lamps\": ["
            + lamps
            + "]}]}]}";

    assertThat(texts(json.getBytes(UTF_8)))
        .anyMatch(
            text -> text.contains("100001 lamps") && text.endsWith("must be between 1 and 4,096"));
  }

  @Test
  void fileOver64MiBIsRefusedBySize(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("large.lampwright.json");
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(100L << 20);
    }

    ReadResult read = ProjectReader.read(file);

    assertThat(read.project()).isEmpty();
    assertThat(read.problems().stream().map(Problem::text))
        .containsExactly(
            "a file of 104,857,600 bytes at line 1, column 1: must be at most 67,108,864 bytes");
  }

  @Test
  void folderIsNoProjectFile(@TempDir Path folder) {
    assertThatThrownBy(() -> ProjectReader.read(folder))
        .isInstanceOf(IOException.class)
        .hasMessage(folder + ": is a folder, not a project file");
  }

  @Test
  void missingFileIsNamed(@TempDir Path folder) {
    Path file = folder.resolve("none.lampwright.json");

    assertThatThrownBy(() -> ProjectReader.read(file))
        .isInstanceOf(IOException.class)
        .hasMessage(file + ": could not read: there is no such file or folder");
  }

  @Test
  void fileNameIsMadeHarmless() {
    ReadResult read = ProjectReader.read("a\u001b[31m\n.json", new byte[0]);

    assertThat(read.lines())
        .containsExactly(
            "a\\u001b[31m\\u000a.json: error: an empty file at line 1, column 1: must be a JSON"
                + " object");
  }

  @Test
  void newerFileIsRefusedWithThatProblemAlone() {
    String json = "{\"lampwright\": 2, \"lights\": [], \"lights\": 7}";

    assertThat(texts(json.getBytes(UTF_8)))
        .containsExactly(
            "lampwright: 2 at line 1, column 16: must be 1; this file was written by a newer"
                + " Lampwright");
  }

  private static List<String> texts(byte[] bytes) {
    ReadResult read = ProjectReader.read("p", bytes);
    assertThat(read.project()).isEmpty();
    return read.problems().stream().map(Problem::text).toList();
  }
}
