package lampwright.app.preset;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.document.Preset;
import lampwright.engine.document.PresetUse;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class BuiltInPresetsTest {
  private static final int FPS = 100;

  static List<Preset> all() {
    return BuiltInPresets.all();
  }

  static Stream<String> names() {
    return all().stream().map(Preset::name);
  }

  @Test
  void thereAreSomeOfEveryUse() {
    assertThat(all()).hasSizeBetween(30, 60);
    for (PresetUse use : PresetUse.values()) {
      assertThat(all()).as(use.key()).filteredOn(p -> p.uses().contains(use)).hasSizeGreaterThan(2);
    }
    assertThat(all()).allMatch(p -> !p.uses().isEmpty() && !p.words().isEmpty());
  }

  @Test
  void namesAreUniqueShortAndPlain() {
    assertThat(names().map(n -> n.toLowerCase(Locale.ROOT))).doesNotHaveDuplicates();
    // Short enough for a card; nothing but what is on a keyboard; never "safe" (rules of the
    // words).
    assertThat(names())
        .allMatch(n -> n.length() <= 28)
        .allMatch(n -> n.matches("[A-Z][A-Za-z0-9 ()+-]*"))
        .noneMatch(n -> n.toLowerCase(Locale.ROOT).contains("safe"));
  }

  @ParameterizedTest
  @MethodSource("names")
  void lightsOnePixelEightPixelsAndAPlainOutput(String name) {
    Preset preset = find(name);
    for (Map.Entry<String, Lamp> lamp : lamps().entrySet()) {
      List<byte[]> frames = frames(preset, lamp.getValue(), 20_000);
      assertThat(frames).as(lamp.getKey()).hasSize(20 * FPS);
      assertThat(frames).as(lamp.getKey()).anyMatch(BuiltInPresetsTest::lit);
    }
  }

  /**
   * Groups of flashes a minute, as the name says, and the range of the standard: direction
   * indicators and hazard warning 60 to 120 (UN Regulation 6 and 48); farm warning lamps 60 to 120
   * (SAE J974); special warning lamps 120 to 240, a group counts as one (UN Regulation 65, annex 5,
   * from memory); machines 60 to 240 (SAE J845); emergency stop signal 180 to 300 (UN Regulation
   * 48); arrow boards 25 to 40 (MUTCD, from memory); aircraft anti-collision lights 40 to 100 (FAR
   * 25.1401, from memory); Q 50 to 79 (Chart 1, section P).
   */
  @ParameterizedTest
  @CsvSource({
    "Single flash 120, 120, 240",
    "Double flash 120, 120, 240",
    "Quad flash 120, 120, 240",
    "Amber beacon 150, 120, 240",
    "Blue beacon 180, 120, 240",
    "Machine beacon 60, 60, 240",
    "Aircraft strobe 60, 40, 100",
    "Direction indicator 90, 60, 120",
    "Hazard warning 90, 60, 120",
    "Farm warning lamp 75, 60, 120",
    "Sweeping indicator, 60, 120",
    "Emergency stop 240, 180, 300",
    "Arrow board 30, 25, 40",
    "North cardinal Q, 50, 79"
  })
  void flashesAsOftenAsItsNameSays(String name, int least, int most) {
    // Off for at least 0.1 s ends a group; counted for a minute, from the bytes of the output.
    List<byte[]> frames = frames(find(name), lamps().get("plain output"), 60_000);
    int groups = 0;
    // The minute is whole periods, so what is dark at its end is dark before its start.
    int dark = 0;
    while (!lit(frames.get(frames.size() - 1 - dark))) {
      dark++;
    }
    for (byte[] frame : frames) {
      if (lit(frame)) {
        groups += dark >= FPS / 10 ? 1 : 0;
        dark = 0;
      } else {
        dark++;
      }
    }
    assertThat(groups).isBetween(least, most);
    Optional<String> rate =
        Stream.of(name.split(" ")).reduce((a, b) -> b).filter(last -> last.matches("\\d+"));
    int counted = groups;
    rate.ifPresent(r -> assertThat(counted).isEqualTo(Integer.parseInt(r)));
  }

  /**
   * The rhythms as charts write them (Chart 1, section P): lit and dark times in hundredths of a
   * second, from the first flash on. The lengths of a single flash are ours where charts leave them
   * open, so only the number of flashes, their longest and the period are held.
   */
  @ParameterizedTest
  @CsvSource({
    "Port buoy Fl R 4s, 400, 1, 0",
    "Starboard buoy Fl G 4s, 400, 1, 0",
    "East cardinal Q(3) 10s, 1000, 3, 0",
    "South cardinal Q(6)+LFl 15s, 1500, 7, 200",
    "West cardinal Q(9) 15s, 1500, 9, 0",
    "Isolated danger Fl(2) 5s, 500, 2, 0",
    "Fairway buoy Iso 4s, 400, 1, 200",
    "Special mark Fl Y 5s, 500, 1, 0",
    // IALA, emergency wreck marking buoy (from memory): blue 1 s, dark 0.5 s, yellow 1 s, dark 0.5
    // s.
    "New wreck buoy, 300, 2, 100"
  })
  void seaMarksKeepTheirRhythm(String name, int period, int flashes, int longest) {
    List<byte[]> frames = frames(find(name), lamps().get("plain output"), 10L * 2 * period);
    List<Integer> lengths = new ArrayList<>();
    int lit = 0;
    for (int i = 0; i < period; i++) {
      assertThat(lit(frames.get(i))).isEqualTo(lit(frames.get(i + period)));
      if (lit(frames.get(i))) {
        lit++;
      } else if (lit > 0) {
        lengths.add(lit);
        lit = 0;
      }
    }
    assertThat(lengths).hasSize(flashes);
    int most = lengths.stream().mapToInt(Integer::intValue).max().orElseThrow();
    if (longest > 0) {
      assertThat(most).isEqualTo(longest);
    } else {
      // A flash is shorter than the dark around it, and than a long flash.
      assertThat(most).isLessThan(200);
    }
  }

  @Test
  void emitterTestsAndScenesThatStayAreOfTheirKind() {
    assertThat(all())
        .filteredOn(p -> p.uses().contains(PresetUse.TEST))
        .allMatch(p -> p.pattern().kind().equals("test-walk"));
    assertThat(((Keyframes) find("Tube start").pattern()).repeat()).isFalse();
  }

  private static Preset find(String name) {
    return all().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  private static Map<String, Lamp> lamps() {
    Map<String, Lamp> lamps = new LinkedHashMap<>();
    lamps.put("one pixel", Lamp.ofPixels("lamp", new PixelRun("one", 0, 1)));
    lamps.put("eight pixels", Lamp.ofPixels("lamp", new PixelRun("eight", 0, 8)));
    lamps.put("plain output", Lamp.ofOutput("lamp", "plain"));
    return lamps;
  }

  private static List<byte[]> frames(Preset preset, Lamp lamp, long lengthMs) {
    Rig rig =
        Rig.of(
            List.of(
                new Chain("one", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 1),
                new Chain("eight", BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), 8)),
            List.of(DriverOutput.of("plain")),
            List.of(lamp));
    BigDecimal length = BigDecimal.valueOf(lengthMs);
    Cue cue =
        new Cue(
            BigDecimal.ZERO,
            length,
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            Blend.COVER,
            preset.pattern());
    Scene scene =
        new Scene(
            "scene",
            length,
            BigDecimal.valueOf(FPS),
            true,
            Dither.OFF,
            List.of(new Track(List.of("lamp"), Span.EACH, List.of(cue))));
    FrameTable table = FrameTable.of(rig, scene);
    List<byte[]> frames = new ArrayList<>();
    FrameCursor cursor = table.cursor();
    while (cursor.hasNext()) {
      byte[] frame = new byte[table.layout().bytes()];
      cursor.next(frame);
      frames.add(frame);
    }
    return frames;
  }

  private static boolean lit(byte[] frame) {
    for (byte duty : frame) {
      if (duty != 0) {
        return true;
      }
    }
    return false;
  }
}
