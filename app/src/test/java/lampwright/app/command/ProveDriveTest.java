package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Firmware that reacts, proved by pulses and levels on the pins of a simulated controller. */
class ProveDriveTest {
  /** What README and measurement promise is 6.3 us at 16 MHz, 11.6 at 8; the widths are whole. */
  private static final int BESIDE_US = 7;

  /** Of an RP2040 it is 0.6 us. */
  private static final int BESIDE_BY_PIO_US = 1;

  private static final String DOOR = "{\"id\": \"door\", \"kind\": \"switch\", \"pin\": \"PB3\"}";

  private static final String TOP =
      """
      {"lampwright": 1, "rig": {"controller": "%s",
       "chains": [{"id": "strip", "pixelType": "ws2812b", "pixels": 144}],
       "lamps": [%s], "inputs": [
        {"id": "c0", "kind": "servo-pulse"%s}, {"id": "c1", "kind": "servo-pulse", "pin": "PB0"},
        {"id": "c2", "kind": "servo-pulse", "pin": "PB4", "centre": "power-up"},
        {"id": "tow", "kind": "switch", "pin": "%s", "activeLow": true},
        {"id": "c3", "kind": "servo-pulse", "pin": "PB5"}]},
       "scenes": [%s], "situations": [
        {"id": "t0", "priority": 1, "scene": "s0",
         "all": [{"input": "c0", "aboveUs": 1500, "hysteresisUs": 0}]},
        {"id": "t1", "priority": 2, "scene": "s1", "start": "shared",
         "all": [{"input": "c1", "belowUs": 1500, "hysteresisUs": 0}]},
        {"id": "t2", "priority": 3, "scene": "s2", "lingerMs": 100,
         "all": [{"input": "c2", "betweenUs": [1400, 1500], "hysteresisUs": 0}]},
        {"id": "t3", "priority": 4, "scene": "s3", "toggle": true,
         "all": [{"input": "c3", "aboveUs": 1700, "taps": 2}]},
        {"id": "t4", "priority": 5, "scene": "s4", "any": [{"input": "tow", "is": "on"}]},
        {"id": "t5", "priority": 6, "scene": "s5", "any": [{"input": "c1", "lost": true}]}]}
      """;

  @TempDir private Path folder;

  private Path project(String controller, String pin, String towPin) throws IOException {
    String lamps =
        IntStream.range(0, 6)
            .mapToObj(
                i ->
                    "{\"id\": \"l%d\", \"pixels\": [{\"chain\": \"strip\", \"from\": %d, \"count\": 24}]}"
                        .formatted(i, 24 * i))
            .collect(Collectors.joining(", "));
    String scenes =
        IntStream.range(0, 6)
            .mapToObj(
                i ->
                    """
                    {"id": "s%d", "lengthMs": 240, "framesPerSecond": 50, "tracks": [
                     {"lamps": ["l%d", "l%d", "l%d"], "cues": [{"lengthMs": 240, "pattern":
                      {"kind": "fade", "fromLevel": 0.2, "toLevel": 0.9}}]}]}
                    """
                        .formatted(i, i, (i + 1) % 6, (i + 3) % 6))
            .collect(Collectors.joining(", "));
    return Files.writeString(
        folder.resolve("p.lampwright.json"), TOP.formatted(controller, lamps, pin, towPin, scenes));
  }

  // Four channels whose pulses drift against each other, so that edges meet; c1 stops for a while.
  private Path drive(int besideUs) throws IOException {
    Random random = new Random(36);
    record Row(BigDecimal ms, String text) {}
    List<Row> rows = new ArrayList<>();
    for (int channel = 0; channel < 4; channel++) {
      double ms = 3 + 5 * channel;
      int pulses = 0;
      while (ms < 2400) {
        int side = random.nextBoolean() ? besideUs : -besideUs;
        int width = (channel == 3 ? 1700 : 1500) + side;
        if (channel == 2 && ++pulses <= 16) {
          // The last makes the centre 1499, and counts already: not at the threshold itself.
          width = pulses < 16 ? 1500 : 1500 - besideUs - 1;
        } else if (random.nextInt(25) == 0) {
          width = random.nextBoolean() ? 100 : 5000;
        } else if (channel == 2) {
          width--;
        }
        BigDecimal at = BigDecimal.valueOf(Math.round(ms * 1000), 3);
        if (channel != 1 || ms < 1200 || ms > 1500) {
          rows.add(new Row(at, at.toPlainString() + ",c" + channel + "," + width));
        }
        ms += 19 + 2 * random.nextDouble();
      }
    }
    for (int ms = 100; ms < 2400; ms += 170) {
      rows.add(new Row(BigDecimal.valueOf(ms), ms + ",tow," + random.nextInt(2)));
    }
    rows.sort(Comparator.comparing(Row::ms));
    String text = rows.stream().map(Row::text).collect(Collectors.joining("\n"));
    return Files.writeString(folder.resolve("d.csv"), "ms,input,value\n" + text + "\n");
  }

  @ParameterizedTest
  @CsvSource({
    "atmega328p, 16, PD2, PC0, 7",
    "atmega328p, 8, PD2, PC0, 13",
    "atmega32u4, 16, PB1, PF0, 7",
    "atmega32u4, 8, PB1, PF0, 13"
  })
  void pulsesBesideThresholdsGiveTheFramesOfRehearse(
      String controller, int megahertz, String pin, String towPin, int besideUs)
      throws IOException {
    Path project = project(controller, ", \"pin\": \"" + pin + "\"", towPin);
    String clocked = "\"" + controller + "\", \"clockMegahertz\": " + megahertz;
    Files.writeString(
        project, Files.readString(project).replace("\"" + controller + "\"", clocked));
    proves(project, drive(besideUs));
  }

  /** It has no timer of 16 bits: switches alone, and a frame clock of 8 bits. */
  @ParameterizedTest
  @ValueSource(ints = {8, 16})
  void switchesGiveTheFramesOfRehearseOnAnAttiny85(int megahertz) throws IOException {
    String text =
        Files.readString(project("attiny85", "", "PB4"))
            .replace("\"attiny85\"", "\"attiny85\", \"clockMegahertz\": " + megahertz)
            .replaceAll("\\{\"id\": \"c\\d\", \"kind\": \"servo-pulse\"[^}]*\\},?", "")
            .replace("\"pixels\": 144", "\"pixels\": 24");
    for (int i = 0; i < 6; i++) {
      text =
          text.replace(
              "\"from\": " + 24 * i + ", \"count\": 24", "\"from\": " + 4 * i + ", \"count\": 4");
    }
    text =
        text.replace("\"activeLow\": true},", "\"activeLow\": true}, " + DOOR)
            .replace("\"c0\", \"aboveUs\": 1500, \"hysteresisUs\": 0", "\"door\", \"is\": \"on\"")
            .replace("\"c1\", \"belowUs\": 1500, \"hysteresisUs\": 0", "\"tow\", \"is\": \"off\"")
            .replace(
                "\"input\": \"c2\", \"betweenUs\": [1400, 1500], \"hysteresisUs\": 0",
                "\"situation\": \"t0\", \"endedWithinMs\": 300")
            .replace("\"c3\", \"aboveUs\": 1700", "\"door\", \"is\": \"on\"")
            .replace(
                "\"input\": \"c1\", \"lost\": true", "\"situation\": \"t3\", \"is\": \"inactive\"");
    Path project = Files.writeString(folder.resolve("p.lampwright.json"), text);
    Random random = new Random(40);
    StringBuilder rows = new StringBuilder("ms,input,value\n");
    int[] levels = {1, 0};
    for (int ms = 30; ms < 5000; ms += 41 + 20 * random.nextInt(15)) {
      int input = random.nextInt(2);
      levels[input] ^= 1;
      rows.append(ms).append(input == 0 ? ",tow," : ",door,").append(levels[input]).append('\n');
    }
    proves(project, Files.writeString(folder.resolve("d.csv"), rows));
  }

  private static void proves(Path project, Path drive) {
    OutsideTools.onThisMachine().findSimulator();
    Run run = Run.of("prove", project, "--drive", drive);
    assertThat(run.err()).doesNotContain("drive:");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains("result       proved").contains("wrong        0");
    assertThat(run.out()).contains("outside      0");
  }

  @Test
  void pulsesThatOverlapOnAPinAreRefused() throws IOException {
    // Ten pulses of 1.5 ms can't end in the same frame of 20 ms.
    String rows = "30,c0,1500\n".repeat(10);
    Path drive = Files.writeString(folder.resolve("d.csv"), "ms,input,value\n" + rows);
    Run run = Run.of("prove", project("atmega328p", ", \"pin\": \"PD2\"", "PC0"), "--drive", drive);
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).contains("rows [8, 9, 10]: pulses on one pin must not overlap");
  }

  @Test
  void inputWithoutAPinIsAnErrorOfCheckAndExport() throws IOException {
    Path project = project("atmega328p", "", "PC0");
    Run check = Run.of("check", project);
    assertThat(check.code()).isEqualTo(1);
    assertThat(check.err() + check.out()).contains("input c0: has no pin");
    Run export = Run.of("export", project, "--to", folder.resolve("out"), "--as", "firmware");
    assertThat(export.code()).isEqualTo(1);
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void pinWithoutChangeInterruptIsAnErrorThatNamesThoseThatHaveOne() throws IOException {
    Run check = Run.of("check", project("atmega32u4", ", \"pin\": \"PD2\"", "PF0"));
    assertThat(check.code()).isEqualTo(1);
    assertThat(check.err() + check.out())
        .contains("input c0: is on pin PD2")
        // ATmega32U4 datasheet: PCINT0 to PCINT7, which are PB0 to PB7, and no others.
        .contains(
            "use one of PB0, PB1, PB2, PB3, PB4, PB5, PB6, PB7: it has pin-change interrupts");
  }

  /** The same on an RP2040: pins by number, and an output beside the chain. */
  private Path onRp2040() throws IOException {
    Path project = project("rp2040", ", \"pin\": \"GP2\"", "GP5");
    String text = Files.readString(project);
    text = text.replace("PB0", "GP3").replace("PB4", "GP14").replace("PB5", "GP28");
    return Files.writeString(project, text);
  }

  @Test
  void pulsesBesideThresholdsOnAnRp2040GiveTheFramesOfRehearse() throws IOException {
    Run run = Run.of("prove", onRp2040(), "--drive", drive(BESIDE_BY_PIO_US));
    assertThat(run.err()).doesNotContain("drive:");
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("result       proved").contains("wrong        0");
    assertThat(run.out()).contains("outside      0").contains("measured to 0.6 us");
  }

  /** 24 pixels of white together are more than that, so that many frames are dimmed. */
  private static void limit(Path project) throws IOException {
    String text = Files.readString(project);
    String limited = "\"rig\": {\"supplyLimitMilliamps\": 900, \"ceiling\": true, ";
    Files.writeString(project, text.replace("\"rig\": {", limited));
  }

  private byte[] rehearsed(Path project, Path drive) throws IOException {
    Path to = folder.resolve("frames.bin");
    assertThat(Run.of("rehearse", project, "--drive", drive, "--to", to).code()).isZero();
    return Files.readAllBytes(to);
  }

  private void provesLimited(Path project, Path drive) throws IOException {
    byte[] plain = rehearsed(project, drive);
    limit(project);
    Files.delete(folder.resolve("frames.bin"));
    assertThat(rehearsed(project, drive)).isNotEqualTo(plain);
    Run check = Run.of("check", project);
    assertThat(check.out() + check.err())
        .contains("[situations-ceiling]")
        .doesNotContain("[situations-current]");
    assertThat(Run.of("measure", project).out()).contains("  Ceiling    frames over 900 mA");
    assertThat(Run.of("measure", project, "--json").out()).contains("ceilingShare");
    Run run = Run.of("prove", project, "--drive", drive);
    assertThat(run.code()).as(run.err() + run.out()).isZero();
    assertThat(run.out()).contains("result       proved").contains("wrong        0");
    System.out.print(run.out());
  }

  @Test
  void ceilingOfAnAtmega328pGivesTheFramesOfRehearse() throws IOException {
    OutsideTools.onThisMachine().findSimulator();
    provesLimited(project("atmega328p", ", \"pin\": \"PD2\"", "PC0"), drive(BESIDE_US));
  }

  @Test
  void ceilingOfAnRp2040GivesTheFramesOfRehearse() throws IOException {
    provesLimited(onRp2040(), drive(BESIDE_BY_PIO_US));
  }

  /** One file more than there are scenes; with a scene left out that a situation needs, none. */
  @Test
  void uf2ExportHasAFileWithTheSituations() throws IOException {
    Path project = onRp2040();
    Path to = folder.resolve("out");
    Run all = Run.of("export", project, "--to", to, "--as", "uf2");
    assertThat(all.code()).isZero();
    assertThat(to.resolve("with_situations.uf2")).isNotEmptyFile();
    assertThat(to.resolve("s0.uf2")).isNotEmptyFile();
    assertThat(all.out()).contains("with_situations.uf2");
    Path few = folder.resolve("few");
    assertThat(Run.of("export", project, "--to", few, "--as", "uf2", "--scene", "s0").code())
        .isZero();
    assertThat(few.resolve("with_situations.uf2")).doesNotExist();
    assertThat(few.resolve("s0.uf2")).isNotEmptyFile();
  }

  /** Nothing is half written where an input can't be read. */
  @Test
  void uf2ExportRefusesInputsThatCannotBeRead() throws IOException {
    Path project = project("rp2040", "", "GP5");
    String text = Files.readString(project);
    text = text.replace("PB0", "GP3").replace("PB4", "GP14").replace("PB5", "GP28");
    Files.writeString(project, text);
    Path to = folder.resolve("out");
    Run run = Run.of("export", project, "--to", to, "--as", "uf2");
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).contains("input c0: has no pin");
    assertThat(to).doesNotExist();
    Run prove = Run.of("prove", project, "--drive", drive(BESIDE_BY_PIO_US));
    assertThat(prove.code()).isEqualTo(1);
    assertThat(prove.err()).contains("input c0: has no pin");
  }

  /** Whose own functions read the inputs: all situations are in the folder. */
  @Test
  void boardOfTheBuildersOwnPlaysSituationsToo() throws IOException {
    Path project = project("esp32", ", \"pin\": \"GPIO4\"", "GPIO5");
    String text = Files.readString(project);
    text = text.replace("PB0", "GPIO12").replace("PB4", "GPIO13").replace("PB5", "GPIO14");
    Files.writeString(project, text);
    Run check = Run.of("check", project);
    assertThat(check.code()).isZero();
    Path to = folder.resolve("out");
    assertThat(Run.of("export", project, "--to", to, "--as", "firmware").code()).isZero();
    Path inside = to.resolve("firmware");
    assertThat(Files.readString(inside.resolve("README.md")))
        .contains("`lampwright_servo_width`", "| c0 | **GPIO4** | servo-pulse |", "React");
    assertThat(Files.readString(inside.resolve("src/lampwright_config.h")))
        .contains("#define LAMPWRIGHT_INPUT_CHANNELS {1, 1, 1, 0, 1}")
        .contains("#define LAMPWRIGHT_INPUT_0_PIN 4");
    Run prove = Run.of("prove", project, "--drive", drive(BESIDE_US));
    assertThat(prove.code()).isEqualTo(1);
    assertThat(prove.err()).contains("your own code drives the pins");
  }
}
