package lampwright.engine.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Preset;
import lampwright.engine.document.PresetUse;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PresetFileTest {
  private static final Preset TURN =
      new Preset(
          "Quarry \u201cturn\u201d",
          List.of(PresetUse.ROAD, PresetUse.WARNING),
          List.of("left", "right"),
          new Indicator(
              new Look(new Colour.Srgb(255, 160, 0), 0.5),
              new BigDecimal("0.25"),
              new BigDecimal("75"),
              new BigDecimal("0.4")));
  private static final Preset PLAIN = Preset.of("Plain", new Steady(Look.DEFAULT));

  @Test
  void presetsAreReadAsTheyAreWritten() {
    String text = PresetFile.write(List.of(TURN, PLAIN));
    assertThat(read(text).presets()).containsExactly(TURN, PLAIN);
    assertThat(read(text).problems()).isEmpty();
  }

  @Test
  void aFileIsWrittenAsAProjectWritesIt() {
    assertThat(PresetFile.write(List.of(PLAIN)))
        .isEqualTo(
            "{\"lampwright\": 1, \"presets\": [{\"name\": \"Plain\", \"pattern\": {\"kind\": \"steady\"}}]}\n");
  }

  @Test
  void aFileWithoutPresetsHasNone() {
    assertThat(read("{\"lampwright\": 1}")).isEqualTo(new PresetFile.Result(List.of(), List.of()));
  }

  @Test
  void everyFaultIsNamedWithItsPlace() {
    PresetFile.Result result =
        read(
            """
            {"lampwright": 1, "presets": [
            {"name": "A", "pattern": {"kind": "steady"}},
            {"name": " ", "pattern": {"kind": "steady"}},
            {"name": "B", "uses": ["road", "party"], "pattern": {"kind": "glitter"}}
            ]}
            """);
    assertThat(result.presets()).isEmpty();
    assertThat(result.problems())
        .hasSize(3)
        .allMatch(line -> line.startsWith("own.json: error: presets["))
        .anyMatch(line -> line.contains("presets[1].name: a blank name at line 3, column 10"))
        .anyMatch(line -> line.contains("presets[2].uses[1]: \"party\" at line 4"))
        .anyMatch(line -> line.contains("presets[2].pattern.kind: \"glitter\" at line 4"));
  }

  @Test
  void twoPresetsOfOneNameAreRefused() {
    String text =
        PresetFile.write(List.of(PLAIN))
            .replace("[{", "[{\"name\": \"Plain\", \"pattern\": {\"kind\": \"flash\"}}, {");
    assertThat(read(text).problems())
        .containsExactly(
            "own.json: error: presets[1].name: \"Plain\" at line 1, column 89: must be unique;"
                + " presets[0] has the same");
    assertThatThrownBy(
            () ->
                Project.PRESETS.with(
                    Project.SHAPE.draft().make(),
                    List.of(PLAIN, Preset.of("Plain", TURN.pattern()))))
        .isInstanceOf(InvalidModelException.class)
        .hasMessageContaining("presets[1].name");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[]",
        "{",
        "{\"lampwright\": 2, \"presets\": []}",
        "{\"presets\": []}",
        "{\"lampwright\": 1, \"presets\": {}}",
        "{\"lampwright\": 1, \"scenes\": []}",
        "{\"lampwright\": 1, \"presets\": [{}]}",
        "{\"lampwright\": 1, \"presets\": [null]}"
      })
  void whatIsNoFileOfPresetsGivesNoneAndSaysWhy(String text) {
    PresetFile.Result result = read(text);
    assertThat(result.presets()).isEmpty();
    assertThat(result.problems()).isNotEmpty();
  }

  @Test
  void aFileTooLargeIsNotRead() {
    assertThat(PresetFile.read("own.json", new byte[PresetFile.MAX_BYTES + 1]).problems())
        .containsExactly(
            "own.json: error: a file of 4194305 bytes at line 1, column 1: must be at most 4194304"
                + " bytes");
  }

  private static PresetFile.Result read(String text) {
    return PresetFile.read("own.json", text.getBytes(StandardCharsets.UTF_8));
  }
}
