package lampwright.exporters.target;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Properties;
import java.util.stream.Collectors;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareJobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TargetTest {
  private static final Path BOARDS = Path.of("/usr/share/arduino/hardware/arduino/avr/boards.txt");

  @TempDir Path folder;

  private static Target target(String id) {
    return Target.of(Controller.find(id).orElseThrow());
  }

  private static List<String> refusals(FirmwareJobs jobs) {
    Rig rig = jobs.rig();
    return Target.of(rig).refusals(rig).stream().map(Finding::text).toList();
  }

  private static List<Code> found(FirmwareJobs jobs) {
    List<Finding> found = new ArrayList<>();
    new TargetFindings().project(jobs.job().project(), found::add);
    return found.stream().map(Finding::code).toList();
  }

  @Test
  void everyControllerThatARigMayNameHasADataFileAndEachWithADriverAClassOfItsOwn() {
    Map<Class<?>, Long> classes =
        Controller.all().stream()
            .map(Target::of)
            .filter(Target::drivesPins)
            .collect(Collectors.groupingBy(Target::getClass, Collectors.counting()));
    assertThat(classes.values()).isNotEmpty().containsOnly(1L);
    assertThat(Controller.all())
        .filteredOn(controller -> Target.of(controller).table().isEmpty())
        .extracting(Controller::id)
        .containsExactly("other");
  }

  @Test
  void everyItemOfADataFileHasItsSource() {
    for (Controller controller : Controller.all()) {
      assertThat(Target.of(controller).table().items())
          .allSatisfy(
              item -> {
                assertThat(item.source()).isNotNull();
                assertThat(item.document()).isNotBlank();
              });
    }
  }

  /** The datasheets: 32 KiB and 2 KiB; 32 KiB and 2.5 KiB; 8 KiB and 512 B; 264 KiB of RAM. */
  @ParameterizedTest
  @CsvSource({
    "atmega328p, 32768, 32256, 2048",
    "atmega32u4, 32768, 28672, 2560",
    "attiny85, 8192, 8192, 512"
  })
  void memoryIsThatOfTheDatasheetLessTheBootLoader(String id, int flash, int free, int ram) {
    Memory memory = target(id).memory();
    assertThat(memory.flashBytes()).hasValue(flash);
    assertThat(memory.freeFlashBytes()).hasValue(free);
    assertThat(memory.ramBytes()).hasValue(ram);
    assertThat(target("rp2040").memory().ramBytes()).hasValue(264 * 1024);
    // Boards of the usual form: 2 MiB beside the chip.
    assertThat(target("rp2040").memory().freeFlashBytes()).hasValue(2 * 1024 * 1024);
  }

  /**
   * From memory: ESP-IDF Programming Guide (160 KiB of static data) and the default partitions of
   * the usual core; STM32F103C8 datasheet, 64 and 20 KiB; SAMD21G18 datasheet, 256 and 32 KiB, less
   * a boot loader of 8 KiB.
   */
  @ParameterizedTest
  @CsvSource({
    "esp32, 4194304, 1310720, 163840",
    "stm32, 65536, 65536, 20480",
    "samd21, 262144, 253952, 32768"
  })
  void memoryOfAFamilyIsThatOfItsSmallestCommonMember(String id, int flash, int free, int ram) {
    Memory memory = target(id).memory();
    assertThat(memory.flashBytes()).hasValue(flash);
    assertThat(memory.freeFlashBytes()).hasValue(free);
    assertThat(memory.ramBytes()).hasValue(ram);
    assertThat(memory.flashSource()).isNotBlank();
    assertThat(target(id).drivesPins()).isFalse();
  }

  /**
   * 1,600 bytes of frame, eight times that in the SPI example's buffer, 3,500 of core and stack.
   */
  @Test
  void chainThatTheSmallestMemberCannotHoldIsRefusedWithTheSource() {
    assertThat(refusals(FirmwareJobs.on("stm32").chain("sk6812-rgbw", 400))).isEmpty();
    assertThat(refusals(FirmwareJobs.on("stm32").chain("sk6812-rgbw", 600)))
        .singleElement()
        .asString()
        .contains("limit 20480 bytes (estimate after STM32F103C8 datasheet")
        .endsWith("[working-memory]");
    Rig rig = FirmwareJobs.on("stm32").chain("ws2812b", 8).rig();
    Finding full = TargetFindings.programMemory(target("stm32"), rig, 60_000, false).orElseThrow();
    assertThat(full.text()).contains("limit 65536 bytes");
  }

  @Test
  void everyFamilyHasNotesOnItsBoards() {
    for (Controller controller : Controller.all()) {
      Target target = Target.of(controller);
      if (!target.drivesPins() && !target.table().isEmpty()) {
        assertThat(TargetTable.notes(controller.id()).orElse(""))
            .as(controller.id())
            .startsWith("### ")
            .contains("BY_SPI", "BY_PINS", "data out pin", "Packed scenes", "Memory is calculated");
        assertThat(target("other").boardNotes()).contains(target.boardNotes());
      }
    }
  }

  /** As the makers' datasheets write them; numbers are those of boards. */
  @ParameterizedTest
  @CsvSource({
    "esp32, 18, GPIO18, 18",
    "esp32, GP4, GPIO4, 4",
    "esp32, GPIO48, GPIO48, 48",
    "stm32, PA15, PA15, PA15",
    "stm32, PB03, PB3, PB3",
    "stm32, 7, 7, 7",
    "samd21, PA2, PA02, ",
    "samd21, PB31, PB31, ",
    "samd21, GP13, 13, 13",
    "other, PC13, PC13, ",
    "other, 15, GP15, 15"
  })
  void pinIsWrittenAsItsMakersAndSketchesDo(
      String controller, String stated, String written, String sketch) {
    FirmwareJobs jobs = FirmwareJobs.on(controller).chain("ws2812b", 1, stated);
    assertThat(refusals(jobs)).isEmpty();
    Target target = target(controller);
    assertThat(target.pins(jobs.rig()).chains().get(0).map(Pin::name)).contains(written);
    assertThat(target.inSketch(new Pin(stated))).isEqualTo(Optional.ofNullable(sketch));
  }

  @ParameterizedTest
  @CsvSource({
    "esp32, PA15, GPIO0 to GPIO48",
    "esp32, GPIO49, GPIO0 to GPIO48",
    "stm32, PA16, 'PA0 to PA15, PB0 to PB15,'",
    "samd21, PC03, 'PA00 to PA31, PB00 to PB31, 0 to 99 (numbers of the board)'"
  })
  void pinThatNoMemberOfAFamilyHasIsRefused(String controller, String pin, String has) {
    assertThat(refusals(FirmwareJobs.on(controller).chain("ws2812b", 1, pin)))
        .singleElement()
        .asString()
        .startsWith("chain c0: is on pin " + pin + "; the " + target(controller).name())
        .contains("use one of " + has)
        .endsWith("[pin-unknown]");
    assertThat(refusals(FirmwareJobs.on(controller).output(pin))).hasSize(1);
  }

  @Test
  void openPinsOfExamplesAreNoneThatTheProjectNames() {
    FirmwareJobs jobs =
        FirmwareJobs.on("esp32").chain("ws2812b", 1).chain("ws2812b", 1, "GPIO4").output();
    SketchPins pins = target("esp32").sketchPins(jobs.rig());
    assertThat(pins.chains()).containsExactly("5", "4");
    assertThat(pins.outputs()).containsExactly("18");
    assertThat(pins.switchPin()).isEqualTo("19");
    SketchPins samd =
        target("samd21").sketchPins(FirmwareJobs.on("samd21").chain("ws2812b", 1, "PA17").rig());
    assertThat(samd.chains())
        .containsExactly("2 /* PA17: set the number that your board gives it */");
    assertThat(samd.switchPin()).isEqualTo("3");
  }

  /** More than the family has pins for examples: the builder sets them. */
  @Test
  void examplesWithoutAPinLeftSayThatTheBuilderSetsIt() {
    FirmwareJobs many = FirmwareJobs.on("samd21").chain("ws2812b", 1);
    for (int i = 0; i < 12; i++) {
      many.output();
    }
    SketchPins pins = target("samd21").sketchPins(many.rig());
    assertThat(pins.outputs()).hasSize(12).last().isEqualTo("99 /* set yours */");
    assertThat(pins.switchPin()).isEqualTo("99 /* set yours */");
  }

  /** RP2040 pins under every name, and an AVR's under the one that the SAMD has for such. */
  @Test
  void otherNamesOfAPinAreTheSamePin() {
    for (String name : new String[] {"GP15", "GPIO15", "15"}) {
      FirmwareJobs jobs = FirmwareJobs.on("rp2040").chain("ws2812b", 1, name).output("GPIO2");
      assertThat(refusals(jobs)).isEmpty();
      assertThat(target("rp2040").pins(jobs.rig()).chains())
          .containsExactly(Optional.of(new Pin("GP15")));
      assertThat(target("rp2040").pins(jobs.rig()).chains().get(0).map(Pin::name)).contains("GP15");
      assertThat(target("rp2040").rp2040Board(jobs.rig()).orElseThrow().outputPins())
          .containsExactly(2);
    }
    Rig avr = FirmwareJobs.on("attiny85", 16).chain("ws2812b", 1, "PB03").output("PB01").rig();
    assertThat(Target.of(avr).sources(avr).get("src/lampwright_wire.c"))
        .contains("&PINB, 1 << 3, saved");
    assertThat(Target.of(avr).sources(avr).get("src/lampwright_outputs.c"))
        .contains("DDRB |= 1 << 1;", "OCR0B = duties[0];");
  }

  /** What hobby IDEs leave of the flash: boards.txt of Debian's arduino-core-avr. */
  @ParameterizedTest
  @CsvSource({"atmega328p, uno", "atmega32u4, leonardo"})
  void freeFlashIsWhatTheIdesBoardsLeave(String id, String board) throws IOException {
    OutsideTools.onThisMachine().findFile(BOARDS, "arduino-core-avr");
    Properties boards = new Properties();
    try (var in = Files.newBufferedReader(BOARDS)) {
      boards.load(in);
    }
    assertThat(target(id).memory().freeFlashBytes())
        .hasValue(Integer.parseInt(boards.getProperty(board + ".upload.maximum_size")));
  }

  /** ATmega328P datasheet: 40 mA a pin, 200 mA in all, 20 mA test condition. */
  @Test
  void pinsBearWhatTheDatasheetsSay() {
    PinCurrents avr = target("atmega328p").pinCurrents().orElseThrow();
    assertThat(avr.pinMilliamps()).isEqualTo(40);
    assertThat(avr.testMilliamps()).isEqualTo(20);
    assertThat(avr.allMilliamps()).isEqualTo(200);
    // From memory: RP2040 datasheet.
    PinCurrents rp2040 = target("rp2040").pinCurrents().orElseThrow();
    assertThat(rp2040.pinMilliamps()).isEqualTo(12);
    assertThat(rp2040.allMilliamps()).isEqualTo(50);
  }

  /** Every register of a PWM pin stands where avr-libc's headers say. */
  @ParameterizedTest
  @ValueSource(strings = {"atmega328p", "atmega32u4", "attiny85"})
  void pwmRegistersAreThoseOfTheHeaders(String id) {
    Map<String, String> macros = headers(id);
    AvrPins pins = ((AvrTarget) target(id)).avrPins();
    assertThat(pins.pwm()).isNotEmpty();
    pins.pwm()
        .forEach(
            (pin, pwm) -> {
              String ddr = "DDR" + pin.name().charAt(1);
              String bit = pin.name().substring(2);
              assertThat(pwm.proof())
                  .as(pin.name())
                  .isEqualTo(
                      "ocr=%s,ddr=%s.%s,com=%s.%s",
                      address(macros, pwm.duty()),
                      address(macros, ddr),
                      bit,
                      address(macros, pwm.control().register()),
                      macros.get(pwm.control().bit()));
              assertThat(pwm.duty()).contains("OCR" + pwm.timer());
            });
  }

  private Map<String, String> headers(String id) {
    OutsideTools.Tool compiler =
        OutsideTools.onThisMachine()
            .findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
    byte[] out =
        compiler
            .run(folder, "-mmcu=" + id, "-E", "-dM", "-include", "avr/io.h", "-x", "c", "/dev/null")
            .quietOut();
    return new String(out, StandardCharsets.UTF_8)
        .lines()
        .map(line -> line.split(" ", 3))
        .filter(words -> words.length == 3)
        .collect(Collectors.toMap(words -> words[1], words -> words[2], (one, other) -> other));
  }

  // _SFR_IO8(0x27) is at 0x47 in data space, _SFR_MEM8(0xB3) at 0xB3.
  private static String address(Map<String, String> macros, String register) {
    String macro = macros.get(register);
    int number = Integer.decode(macro.replaceFirst(".*\\((0[xX][0-9A-Fa-f]+)\\)", "$1"));
    return String.format("0x%02X", macro.contains("_SFR_IO") ? number + 0x20 : number);
  }

  @ParameterizedTest
  @ValueSource(strings = {"GP0", "GP15", "GP28"})
  void rp2040HasPins0To28(String pin) {
    assertThat(refusals(FirmwareJobs.on("rp2040").chain("ws2812b", 1, pin))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"GP29", "PA0", "PD6"})
  void rp2040RefusesOtherPins(String pin) {
    assertThat(refusals(FirmwareJobs.on("rp2040").chain("ws2812b", 1, pin)))
        .singleElement()
        .asString()
        .startsWith("chain c0: is on pin " + pin + "; the RP2040 has no such pin: use one of GP0, ")
        .contains("GP28 [pin-unknown]");
    assertThat(refusals(FirmwareJobs.on("rp2040").output(pin)))
        .singleElement()
        .asString()
        .contains("output o0: is on pin " + pin);
  }

  @Test
  void pinsOfAnUnknownControllerAreTheBuildersAffair() {
    assertThat(refusals(FirmwareJobs.on("other").chain("ws2812b", 1, "GP40").output("PK3")))
        .isEmpty();
  }

  @Test
  void pinThatTheControllerLacksIsRefusedNamingThoseItHas() {
    assertThat(refusals(FirmwareJobs.on("attiny85").chain("ws2812b", 1, "GP0")))
        .containsExactly(
            "chain c0: is on pin GP0; the ATtiny85 has no such pin: use one of PB0, PB1, PB2, PB3,"
                + " PB4 [pin-unknown]");
  }

  @Test
  void outputPinWithoutPwmIsRefusedNamingThoseWithIt() {
    assertThat(refusals(FirmwareJobs.on("attiny85").chain("ws2812b", 1).output("PB3")))
        .containsExactly(
            "output o0: is on pin PB3; that pin of the ATtiny85 has no PWM: use one of PB0, PB1, PB4"
                + " [pin-without-pwm]");
  }

  @Test
  void outputsThatLeaveNoTimerAreRefusedNamingPinsThatShareOne() {
    assertThat(refusals(FirmwareJobs.on("atmega328p").output("PB1").output("PB3").output("PD5")))
        .containsExactly(
            "controller ATmega328P: the outputs on PB1, PB3, PD5 use every timer; one of its 3 timers"
                + " must count the frames: use pins that share a timer: PD5 and PD6; PB1 and PB2; PB3"
                + " and PD3 [timers-used-up]");
  }

  @ParameterizedTest
  @CsvSource({
    "atmega328p, ATmega328P, 5, 4, 3",
    "atmega328p, ATmega328P, 7, 4, 3",
    "atmega32u4, ATmega32U4, 5, 4, 3",
    "attiny85, ATtiny85, 3, 2, 2"
  })
  void moreOutputsThanCanBeAreRefusedSayingHowManyCan(
      String controller, String name, int count, int most, int timers) {
    assertThat(refusals(outputs(controller, count)))
        .containsExactly(
            "controller "
                + name
                + ": "
                + count
                + " outputs; at most "
                + most
                + ", as one of its "
                + timers
                + " timers must count the frames: drive the others as pixels of a chain"
                + " [too-many-outputs]");
    assertThat(refusals(outputs(controller, most))).isEmpty();
  }

  private static FirmwareJobs outputs(String controller, int count) {
    FirmwareJobs jobs = FirmwareJobs.on(controller).chain("ws2812b", 1);
    for (int i = 0; i < count; i++) {
      jobs.output();
    }
    return jobs;
  }

  @Test
  void moreChainsThanTheDriverSendsAreRefused() {
    FirmwareJobs nine = FirmwareJobs.on("atmega328p");
    for (int i = 0; i < 9; i++) {
      nine.chain("ws2812b", 1);
    }
    assertThat(refusals(nine))
        .containsExactly(
            "controller ATmega328P: 9 chains; its driver sends at most 8: join chains, or divide them"
                + " between controllers [too-many-chains]");
  }

  @Test
  void moreChainsThanPinsAreRefused() {
    FirmwareJobs six = FirmwareJobs.on("attiny85");
    for (int i = 0; i < 6; i++) {
      six.chain("ws2812b", 1);
    }
    assertThat(refusals(six))
        .containsExactly(
            "chain c5: no pin is left; the ATtiny85 has 5: join chains, or divide them between"
                + " controllers [pins-used-up]");
  }

  @Test
  void frameTooLargeForTheWorkingMemoryIsRefused() {
    // 450 bytes of frame, 9 + 7 of player, 14 of the show, 96 of stack.
    assertThat(refusals(FirmwareJobs.on("attiny85").chain("ws2812b", 150)))
        .containsExactly(
            "controller ATtiny85: frame, player and stack need 576 bytes of working memory; limit 512"
                + " bytes (ATtiny85 datasheet): shorten the chains or use fewer lamps: 64 bytes too many"
                + " [working-memory]");
  }

  /** Half a bit of 100 ns is less than any AVR's cycle can send. */
  @Test
  void partWhoseTimesCannotBeKeptIsRefusedInWords() {
    PixelType quick = withLine("quick", LineTiming.ofNominal(100, 200, 200, 100, 20, 50));
    assertThat(
            refusals(
                FirmwareJobs.on("atmega328p")
                    .chain("ws2812b", 1)
                    .chain(quick, 1, Optional.empty())))
        .containsExactly(
            "chain c1: the ATmega328P at 16 MHz sends in steps of 62.5 ns and cannot keep the times of"
                + " quick; T0H 80 to 120 ns, T0L 180 to 220 ns, T1H 180 to 220 ns, T1L 80 to 120 ns"
                + " (line times of the pixel type): use other pixels or another controller"
                + " [line-impossible]");
  }

  @Test
  void partThatAnotherClockCanSendNamesThatClock() {
    PixelType narrow = withLine("narrow", LineTiming.ofNominal(312, 938, 688, 562, 30, 50));
    assertThat(refusals(FirmwareJobs.on("attiny85", 8).chain(narrow, 1, Optional.empty())))
        .singleElement()
        .asString()
        .contains(": use a clock of 16 MHz [line-impossible]");
    assertThat(refusals(FirmwareJobs.on("attiny85", 16).chain(narrow, 1, Optional.empty())))
        .isEmpty();
  }

  private static PixelType withLine(String id, LineTiming line) {
    PixelType usual = BuiltInPixelTypes.find("ws2812b").orElseThrow();
    return new PixelType(
        id, usual.order(), usual.idleMilliamps(), usual.volts(), usual.emitters(), line);
  }

  @Test
  void clockThatTheDriverIsNotMadeForIsRefused() {
    assertThat(refusals(FirmwareJobs.on("attiny85", 12).chain("ws2812b", 1)))
        .containsExactly(
            "controller ATtiny85: clock is 12 MHz; its driver is made for 8 MHz or 16 MHz: set"
                + " the controller clock to one of these, or leave it out [clock-unsupported]");
    assertThat(target("attiny85").hertz()).hasValue(8_000_000);
    assertThat(
            Target.of(Controller.find("attiny85").orElseThrow().withClock(OptionalInt.of(16)))
                .hertz())
        .hasValue(16_000_000);
  }

  /** FACTS: at 16 MHz the driver's bit is 1.313 us; 640 pixels of 24 bits and 300 us of reset. */
  @Test
  void lineTimesAreThoseOfTheDriver() {
    Rig rig = FirmwareJobs.on("atmega328p").chain("ws2812b", 640).rig();
    LineTimes times = Target.lineTimesOf(rig);
    assertThat(times.driven()).isTrue();
    assertThat(times.frameUs()).isBetween(640 * 24 * 1.3125 + 300, 640 * 24 * 1.3125 + 320);
    assertThat(times.share(50)).isGreaterThan(1);
    Rig unnamed = FirmwareJobs.onNone().chain("ws2812b", 640).rig();
    assertThat(Target.lineTimesOf(unnamed).frameUs()).isBetween(19_500 - 1e-6, 19_500 + 1e-6);
    assertThat(Target.lineTimesOf(unnamed).driven()).isFalse();
  }

  /** 28,650 bytes are less than the 28,672 that are free, but the player needs its share. */
  @Test
  void packedScenesAndPlayerMustFitTogether() {
    Rig rig = FirmwareJobs.on("atmega32u4").chain("ws2812b", 8).rig();
    Target target = Target.of(rig);
    int code = target.size(rig).programBytes();
    assertThat(code).isBetween(3000, 4000);
    Finding refused = TargetFindings.programMemory(target, rig, 28_650, false).orElseThrow();
    assertThat(refused.code()).isEqualTo(Code.PROGRAM_MEMORY);
    assertThat(refused.text())
        .contains("28650 bytes packed", code + " bytes", "limit 28672 bytes")
        .doesNotContain("pack the data");
    assertThat(TargetFindings.programMemory(target, rig, 28_672 - code, false)).isEmpty();
    assertThat(TargetFindings.programMemory(target, rig, 28_673 - code, false)).isPresent();
    // Situations need program memory of their own.
    assertThat(TargetFindings.programMemory(target, rig, 28_672 - code, true)).isPresent();
    int reacting = TargetFindings.programBytes(target, rig, true);
    assertThat(reacting).isGreaterThan(code);
    assertThat(TargetFindings.programMemory(target, rig, 28_672 - reacting, true)).isEmpty();
    assertThat(TargetFindings.programMemory(target, rig, 28_673 - reacting, true)).isPresent();
  }

  @Test
  void currentOfAPinIsJudged() {
    assertThat(found(FirmwareJobs.on("atmega328p").ledsOnPin(500)))
        .containsExactly(Code.OUTPUT_PIN_CURRENT, Code.PINS_CURRENT);
    assertThat(found(FirmwareJobs.on("atmega328p").ledsOnPin(41)))
        .containsExactly(Code.OUTPUT_PIN_CURRENT);
    assertThat(found(FirmwareJobs.on("atmega328p").ledsOnPin(40)))
        .containsExactly(Code.OUTPUT_PIN_HIGH);
    assertThat(found(FirmwareJobs.on("atmega328p").ledsOnPin(20))).isEmpty();
    assertThat(found(FirmwareJobs.on("rp2040").ledsOnPin(13)))
        .containsExactly(Code.OUTPUT_PIN_CURRENT);
    assertThat(found(FirmwareJobs.on("other").ledsOnPin(500))).isEmpty();
    // Five of 11 mA are more than the 50 mA of all pins.
    FirmwareJobs five = FirmwareJobs.on("rp2040");
    for (int i = 0; i < 5; i++) {
      five.ledsOnPin(11);
    }
    assertThat(found(five)).containsExactly(Code.PINS_CURRENT);
  }

  @Test
  void projectWithoutAControllerIsToldThatTheUsualOneWillNotDo() {
    FirmwareJobs nine = FirmwareJobs.onNone();
    for (int i = 0; i < 9; i++) {
      nine.chain("ws2812b", 1);
    }
    assertThat(found(nine)).containsExactly(Code.CONTROLLER_UNFIT);
    assertThat(found(FirmwareJobs.onNone().chain("ws2812b", 1))).isEmpty();
  }

  @Test
  void switchOfTheExampleIsOnAPinThatNothingElseUses() {
    ProjectJob job = FirmwareJobs.on("attiny85").chain("ws2812b", 1).output().job();
    PinPlan plan = target("attiny85").pins(job.project().rig());
    assertThat(plan.chains()).containsExactly(Optional.of(new Pin("PB2")));
    assertThat(plan.outputs()).containsExactly(Optional.of(new Pin("PB4")));
    assertThat(plan.switchPin()).contains(new Pin("PB3"));
    assertThat(plan.clockTimer()).hasValue(0);
  }
}
