package lampwright.engine.situation;

import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DriveReaderTest {
  private static final List<Input> INPUTS =
      List.of(Input.of("throttle", InputKind.SERVO_PULSE), Input.of("tow", InputKind.SWITCH));

  private static DriveReader.Result read(String text) {
    return DriveReader.read(text.getBytes(UTF_8), INPUTS);
  }

  private static List<String> problems(String text) {
    DriveReader.Result read = read(text);
    assertThat(read.drive().isPresent()).isEqualTo(read.problems().isEmpty());
    return read.problems().stream().map(DriveReader.Problem::text).toList();
  }

  @Test
  void rowsAreReadExactly() {
    List<Drive.Row> rows =
        List.of(
            new Drive.Row(new BigDecimal("0"), 0, 1500),
            new Drive.Row(new BigDecimal("20.000000001"), 1, 1),
            new Drive.Row(new BigDecimal("20.000000001"), 0, 0));
    String text = "ms,input,value\n0,throttle,1500\n20.000000001,tow,1\n20.000000001,throttle,0";
    assertThat(read(text).drive()).contains(new Drive(rows));
    assertThat(read(text + "\n").drive()).contains(new Drive(rows));
    assertThat(read("\ufeff" + text.replace("\n", "\r\n")).drive()).contains(new Drive(rows));
  }

  @Test
  void driveMayHaveNoRows() {
    assertThat(read("ms,input,value").drive()).contains(new Drive(List.of()));
    assertThat(read("ms,input,value\n").drive()).contains(new Drive(List.of()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5,throttel,1500|line 3: \"throttel\": input must be the id of an input of the project; did"
            + " you mean \"throttle\"?",
        "5,Tow,1|line 3: \"Tow\": input must be the id of an input of the project; did you mean"
            + " \"tow\"?",
        "5,tow,2|line 3: \"2\": value of a switch must be 0 or 1",
        "5,tow,|line 3: \"\": value of a switch must be 0 or 1",
        "5,throttle,1500.5|line 3: \"1500.5\": value must be a whole number between 0 and 1,000,000",
        "5,throttle,-1|line 3: \"-1\": value must be a whole number between 0 and 1,000,000",
        "5,throttle,1000001|line 3: \"1000001\": value must be a whole number between 0 and"
            + " 1,000,000",
        "3.999,throttle,1|line 3: \"3.999\": ms must be at least 4, that of the row before",
        "-5,throttle,1|line 3: \"-5\": ms must be a decimal number between 0 and 86,400,000",
        "5e1,throttle,1|line 3: \"5e1\": ms must be a decimal number between 0 and 86,400,000",
        "86400000.1,throttle,1|line 3: \"86400000.1\": ms must be a decimal number between 0 and"
            + " 86,400,000",
        "5,throttle|line 3: \"5,throttle\": must have three values: ms,input,value",
        "5,throttle,1,2|line 3: \"5,throttle,1,2\": must have three values: ms,input,value",
        "\u0661,throttle,1|line 3: \"\u0661\": ms must be a decimal number between 0 and 86,400,000",
      })
  void rowIsRefusedWithItsLine(String row, String problem) {
    assertThat(problems("ms,input,value\n4,tow,1\n" + row + "\n6,tow,1\n"))
        .containsExactly(problem);
  }

  @Test
  void lastInstantIsADay() {
    assertThat(problems("ms,input,value\n86400000,tow,1")).isEmpty();
  }

  @Test
  void allProblemsOfAFileAreListedUpToALimit() {
    assertThat(problems("ms,input,value\n\nx,y,z\n")).hasSize(4);
    assertThat(problems("ms,input,value\n" + "x,y,z\n".repeat(1000))).hasSize(100);
  }

  @Test
  void fileOfAnotherKindIsOneProblem() {
    assertThat(problems("")).containsExactly("line 1: \"\": must be ms,input,value");
    assertThat(problems("{\"lampwright\": 1}\n{}\n"))
        .containsExactly("line 1: \"{\\\"lampwright\\\": 1}\": must be ms,input,value");
    assertThat(DriveReader.read("ms,input,value".getBytes(UTF_16), INPUTS).problems())
        .extracting(DriveReader.Problem::text)
        .containsExactly(
            "a file that is not UTF-8 text: must be CSV with the first line ms,input,value");
    assertThat(problems("\u001b[31mms,input,value\n").get(0)).doesNotContain("\u001b");
  }

  @Test
  void fileThatIsTooLargeIsRefused() {
    assertThat(DriveReader.read(new byte[DriveReader.MAX_BYTES + 1], INPUTS).problems())
        .extracting(DriveReader.Problem::text)
        .containsExactly("a file of more than 67,108,864 bytes: must be at most 67,108,864 bytes");
    String rows = "ms,input,value\n" + "0,tow,1\n".repeat(Drive.MAX_ROWS);
    assertThat(problems(rows)).isEmpty();
    assertThat(problems(rows + "0,tow,1\n"))
        .containsExactly("line 1000002: one more row: must be at most 1,000,000 rows");
  }

  @Property(tries = 3000, seed = "15")
  void damagedFilesAreRefusedOrRead(@ForAll Random random) {
    byte[] bytes = "ms,input,value\n0,throttle,1500\n20.5,tow,1\n40,throttle,800\n".getBytes(UTF_8);
    for (int i = random.nextInt(4); i >= 0; i--) {
      bytes[random.nextInt(bytes.length)] =
          random.nextBoolean() ? (byte) random.nextInt(256) : bytes[random.nextInt(bytes.length)];
    }
    DriveReader.Result read = DriveReader.read(bytes, INPUTS);
    assertThat(read.drive().isPresent()).isEqualTo(read.problems().isEmpty());
    read.drive()
        .ifPresent(
            drive ->
                assertThat(drive.rows())
                    .allSatisfy(row -> assertThat(row.input()).isBetween(0, 1)));
  }
}
