package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Show;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareExporter;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.target.FirmwareSize;
import lampwright.exporters.target.Target;
import lampwright.exporters.target.TargetFindings;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What situations may take of an ATmega328P, counted from what avr-gcc links and simavr runs: the
 * limits that were set for 16 situations and 4 inputs. The project has every kind of condition.
 */
class SituationsFitTest {
  private static final Path PROJECT =
      Path.of("src/test/resources/lampwright/exporters/firmware/situations-16.lampwright.json");

  private static final int MOST_FLASH = 1536;
  private static final int MOST_RAM = 64;
  private static final double MOST_OF_A_FRAME = 0.05;
  private static final int CYCLES_OF_A_FRAME = 16_000_000 / 50;
  private static final int FRAMES = 1000;

  /** What is reckoned for the stack of firmware with situations. */
  private static final int STACK_RAM = 96 + 32;

  private static final Pattern SIZES = Pattern.compile("\\n *(\\d+)\\s+(\\d+)\\s+(\\d+)");
  private static final Pattern CYCLES =
      Pattern.compile("quiet (\\d+), busy (\\d+), .* stack (\\d+)");

  @TempDir private Path folder;

  private static final String TOW = "\"kind\": \"switch\", \"pin\": \"PC0\", \"activeLow\": true";

  private static byte[] packed;

  @BeforeAll
  static void pack() throws Exception {
    packed = packed(project());
  }

  private record Sizes(int flash, int ram) {}

  private static Project project() throws IOException {
    return ProjectReader.read(PROJECT).project().orElseThrow();
  }

  /** With a fourth channel in place of the switch, and the channels on these pins. */
  private Project fourChannels(List<String> pins) throws IOException {
    String json =
        Files.readString(PROJECT)
            .replace("\"PD2\"", "\"" + pins.get(0) + "\"")
            .replace("\"PD3\"", "\"" + pins.get(1) + "\"")
            .replace("\"PD4\"", "\"" + pins.get(2) + "\"")
            .replace(TOW, "\"kind\": \"servo-pulse\", \"pin\": \"" + pins.get(3) + "\"")
            .replace("\"tow\", \"is\": \"off\"", "\"tow\", \"belowUs\": 1500")
            .replace("\"tow\", \"is\": \"on\"", "\"tow\", \"aboveUs\": 1500");
    Path file = Files.writeString(folder.resolve("four.lampwright.json"), json);
    Project project = ProjectReader.read(file).project().orElseThrow();
    assertThat(project.rig().inputs()).hasSize(4).allMatch(Input::isChannel);
    return project;
  }

  @Test
  void sixteenSituationsAndFourInputsKeepTheirLimits() throws Exception {
    Project with = project();
    Project without = Project.SITUATIONS.with(with, List.of());
    without = Project.RIG.with(without, Rig.INPUTS.with(with.rig(), List.of()));
    Sizes least = built("without", without);
    assertFits("three channels and a switch", with, packed, least);
    Project four = fourChannels(List.of("PD2", "PD3", "PD4", "PD5"));
    byte[] data = packed(four);
    assertFits("four on one port", four, data, least);
    four = fourChannels(List.of("PD2", "PD3", "PD4", "PC0"));
    assertFits("four on two ports", four, data, least);
    four = fourChannels(List.of("PD2", "PD3", "PB1", "PC0"));
    assertFits("four on three ports", four, data, least);
  }

  private void assertFits(String name, Project with, byte[] data, Sizes least) throws Exception {
    assertThat(with.situations()).hasSize(16);
    assertThat(with.rig().inputs()).hasSize(4);
    Sizes most = built(name.replace(' ', '-'), with);
    int flash = most.flash() - least.flash();
    int ram = most.ram() - least.ram();
    int tables = data.length - new Unpacker(data).data().showAt;
    System.out.printf(
        "16 situations, %s: %d bytes of flash, of which tables %d; %d of RAM%n",
        name, flash, tables, ram);
    assertThat(flash).as(name).isLessThanOrEqualTo(MOST_FLASH);
    assertThat(ram).as(name).isLessThanOrEqualTo(MOST_RAM);
    // What check reckons with is never less than what is linked, and not much more.
    Target target = Target.of(with.rig());
    FirmwareSize said = target.size(with.rig(), Optional.of(ShowRoom.of(data)));
    FirmwareSize saidPlain = target.size(with.rig());
    assertThat(flash - tables)
        .as(name)
        .isBetween(
            (said.programBytes() - saidPlain.programBytes()) * 3 / 4,
            said.programBytes() - saidPlain.programBytes());
    assertThat(said.ramBytes() - STACK_RAM).as(name).isBetween(most.ram(), most.ram() + 10);
  }

  /** Readings at every frame, near what conditions ask about; without decoding. */
  @Test
  void situationsTakeATwentiethOfAFrameAtMost() throws Exception {
    ShowPlayer player = new ShowPlayer(packed);
    ByteSink in = new ByteSink().number(packed.length, 4).all(packed).u16(player.frameBytes());
    in.number(FRAMES, 4).u16(0);
    Random random = new Random(40);
    int[] about = {1200, 1350, 1400, 1440, 1460, 1500, 1530, 1540, 1600, 1800};
    int[] held = new int[4];
    ByteSink want = new ByteSink();
    byte[] frame = new byte[player.frameBytes()];
    for (int f = 0; f < FRAMES; f++) {
      in.u16(held.length);
      for (int i = 0; i < held.length; i++) {
        if (f < 16) {
          held[i] = 1500;
        } else if (random.nextInt(20) == 0) {
          held[i] = about[random.nextInt(about.length)] + random.nextInt(61) - 30;
        }
        boolean isSwitch = project().rig().inputs().get(i).kind() == InputKind.SWITCH;
        int reading = isSwitch ? held[i] & 1 : held[i];
        in.u8(i).u16(reading);
        player.take(i, reading);
      }
      player.frame(frame);
      want.u8(0).all(frame);
    }
    AvrSituations avr = new AvrSituations(folder);
    Path firmware =
        avr.build(ShowRoom.of(packed), "-DLAMPWRIGHT_COLUMN_BYTES=2", "-DLAMPWRIGHT_MAX_LAMPS=11");
    assertThat(avr.run(in.toBytes(), List.of(firmware))).isEqualTo(want.toBytes());
    Matcher cycles = CYCLES.matcher(avr.report());
    assertThat(cycles.find()).isTrue();
    int quiet = Integer.parseInt(cycles.group(1));
    System.out.printf(
        "cycles of a frame: %d, %.1f %% of it; with starts of lamps %s; stack %s%n",
        quiet, 100.0 * quiet / CYCLES_OF_A_FRAME, cycles.group(2), cycles.group(3));
    assertThat(quiet).isLessThanOrEqualTo((int) (MOST_OF_A_FRAME * CYCLES_OF_A_FRAME));
  }

  private static Project limited() throws IOException {
    Project plain = project();
    Rig rig =
        Rig.SHAPE
            .draft(plain.rig())
            .set(Rig.CEILING, true)
            .set(Rig.SUPPLY_LIMIT_MILLIAMPS, 300.0)
            .make();
    return Project.RIG.with(plain, rig);
  }

  @Test
  void ceilingTakesNoMoreThanIsReckoned() throws Exception {
    Project with = limited();
    byte[] limitedData = packed(with);
    Sizes most = built("limited", with);
    Sizes least = built("unlimited", project());
    int flash = most.flash() - least.flash() - (limitedData.length - packed.length);
    Target target = Target.of(with.rig());
    int reckoned =
        TargetFindings.programBytes(target, with.rig(), true)
            - TargetFindings.programBytes(target, project().rig(), true);
    System.out.printf(
        "ceiling: %d bytes of flash, table %d, %d of RAM%n",
        flash, limitedData.length - packed.length, most.ram() - least.ram());
    assertThat(flash).isBetween(reckoned * 3 / 4, reckoned);
    FirmwareSize said = target.size(with.rig(), Optional.of(ShowRoom.of(limitedData)));
    assertThat(said.ramBytes() - STACK_RAM).isBetween(most.ram(), most.ram() + 10);
  }

  /** Of 432 bytes, many of them lit. */
  @Test
  void ceilingTakesATwentiethOfAFrameAtMost() throws Exception {
    byte[] data = packed(limited());
    ShowPlayer player = new ShowPlayer(data);
    ByteSink in = new ByteSink().number(data.length, 4).all(data).u16(player.frameBytes());
    in.number(FRAMES, 4).u16(0);
    ByteSink want = new ByteSink();
    byte[] frame = new byte[player.frameBytes()];
    Random random = new Random(43);
    int changed = 0;
    for (int f = 0; f < FRAMES; f++) {
      in.u16(4);
      for (int i = 0; i < 4; i++) {
        int width = f < 16 ? 1500 : 1150 + 10 * (f / 40 * 7 % 70) + random.nextInt(3);
        boolean isSwitch = project().rig().inputs().get(i).kind() == InputKind.SWITCH;
        int reading = isSwitch ? f / 100 & 1 : width;
        in.u8(i).u16(reading);
        player.take(i, reading);
      }
      player.frame(frame);
      byte[] sent = player.sent(frame);
      changed += Arrays.equals(sent, frame) ? 0 : 1;
      want.u8(0).all(sent);
    }
    assertThat(changed).isPositive();
    AvrSituations avr = new AvrSituations(folder);
    Path firmware =
        avr.build(
            ShowRoom.of(data),
            "-DLAMPWRIGHT_COLUMN_BYTES=2",
            "-DLAMPWRIGHT_MAX_LAMPS=11",
            "-DLAMPWRIGHT_CEILING=1");
    assertThat(avr.run(in.toBytes(), List.of(firmware))).isEqualTo(want.toBytes());
    Matcher cycles = Pattern.compile("ceiling (\\d+)").matcher(avr.report());
    assertThat(cycles.find()).isTrue();
    int most = Integer.parseInt(cycles.group(1));
    System.out.printf(
        "cycles of the ceiling over %d bytes: %d, %.1f %% of a frame%n",
        frame.length, most, 100.0 * most / CYCLES_OF_A_FRAME);
    assertThat(most).isLessThanOrEqualTo((int) (MOST_OF_A_FRAME * CYCLES_OF_A_FRAME));
    Rig rig = limited().rig();
    assertThat(Target.of(rig).ceilingUs(rig) * 16).isBetween(1.0 * most, 1.1 * most);
  }

  /** A rate at which frames can be sent, but not added up as well. */
  @Test
  void frameTimeHasTheTimeOfTheCeiling() throws IOException {
    Rig rig = limited().rig();
    Target target = Target.of(rig);
    double us = target.lineTimes(rig).frameUs() + target.ceilingUs(rig) / 2;
    BigDecimal rate = BigDecimal.valueOf(1e6 / us).setScale(2, RoundingMode.HALF_UP);
    Scene scene = Scene.FRAMES_PER_SECOND.with(project().scenes().get(0), rate);
    assertThat(TargetFindings.frameTime(target, rig, scene, false)).isEmpty();
    assertThat(TargetFindings.frameTime(target, rig, scene, true))
        .extracting(Finding::code)
        .containsExactly(Code.FRAME_TIME);
    assertThat(TargetFindings.frameTime(target, project().rig(), scene, true)).isEmpty();
  }

  /** 432 bytes of one weight: 0xFFFFFFFF / 255 / 432 is 38,988.4. */
  @Test
  void ceilingWhoseSumsCouldExceed32BitsIsRefused() throws Exception {
    AvrSituations avr = new AvrSituations(folder);
    byte[] data = packed(limited());
    Path firmware =
        avr.build(
            ShowRoom.of(data),
            "-DLAMPWRIGHT_COLUMN_BYTES=2",
            "-DLAMPWRIGHT_MAX_LAMPS=11",
            "-DLAMPWRIGHT_CEILING=1");
    Path portable = ShowPlayerTest.portable(folder);
    for (int weight : new int[] {38_988, 38_989}) {
      byte[] heavy = data.clone();
      heavy[heavy.length - 4] = (byte) weight;
      heavy[heavy.length - 3] = (byte) (weight >> 8);
      ShowPlayerTest.signed(heavy);
      ByteSink in = new ByteSink().number(heavy.length, 4).all(heavy).u16(432);
      byte[] input = in.number(1, 4).u16(0).u16(0).toBytes();
      byte[] onAvr = avr.run(input, List.of(firmware));
      byte[] inC = AvrSituations.execute(folder, List.of(portable.toString()), input);
      assertThat(inC).isEqualTo(onAvr);
      if (weight == 38_988) {
        new ShowPlayer(heavy);
        assertThat(onAvr[0]).isZero();
      } else {
        assertThatThrownBy(() -> new ShowPlayer(heavy)).isInstanceOf(PackedDataException.class);
        byte[] dark = new byte[1 + 432];
        dark[0] = 6; // LAMPWRIGHT_FAULT
        assertThat(onAvr).isEqualTo(dark);
      }
    }
  }

  /** 610 pixels of 3 bytes, 96 of stack and 100 of the player are 2,026 of 2,048 bytes. */
  @Test
  void rigThatFitsWithoutSituationsAloneIsRefusedByCheckAndExport() throws Exception {
    Path large = folder.resolve("large.lampwright.json");
    Files.writeString(
        large, Files.readString(PROJECT).replace("\"pixels\": 144", "\"pixels\": 610"));
    Project whole = ProjectReader.read(large).project().orElseThrow();
    Project with = Project.SITUATIONS.with(whole, whole.situations().subList(0, 1));
    with = Project.SCENES.with(with, whole.scenes().subList(0, 1));
    Project without = Project.SITUATIONS.with(with, List.of());
    assertThat(FirmwareMemory.findings(without, without.scenes(), Progress.SILENT)).isEmpty();
    assertThat(FirmwareMemory.findings(with, with.scenes(), Progress.SILENT))
        .extracting(Finding::code)
        .containsExactly(Code.WORKING_MEMORY);
    ProjectJob job = ProjectJob.of(with, with.scenes());
    assertThatThrownBy(
            () ->
                new FirmwareExporter()
                    .export(job, file -> open(folder.resolve("large"), file), Progress.SILENT))
        .isInstanceOf(ExportRefusedException.class);
    assertThat(folder.resolve("large")).doesNotExist();
  }

  private static byte[] packed(Project project) throws Exception {
    ProjectJob job = ProjectJob.of(project, project.scenes());
    Optional<Show> show = job.show();
    return ScenePacker.pack(
            "packed", job.tables(), show, Target.of(project.rig()).decodeCost(), Progress.SILENT)
        .data();
  }

  private Sizes built(String name, Project project) throws Exception {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.findSimulator();
    Path to = folder.resolve(name);
    new FirmwareExporter()
        .export(ProjectJob.of(project, project.scenes()), file -> open(to, file), Progress.SILENT);
    tools.find("make", "make").run(to, "-s", "show.elf");
    byte[] counted = tools.find("avr-size", "binutils-avr").run(to, "show.elf").out();
    Matcher sizes = SIZES.matcher(new String(counted, StandardCharsets.UTF_8));
    assertThat(sizes.find()).isTrue();
    int data = Integer.parseInt(sizes.group(2));
    return new Sizes(
        Integer.parseInt(sizes.group(1)) + data, Integer.parseInt(sizes.group(3)) + data);
  }

  private static OutputStream open(Path folder, String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }
}
