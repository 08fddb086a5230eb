package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Contrasts of the palettes by W3C WCAG 2.2, 1.4.3 and 1.4.11: 4.5 for text, 3 for marks. */
class PaletteTest {
  private static final Pattern COLOUR = Pattern.compile("-lw-([a-z-]+): #([0-9a-f]{6});");

  @ParameterizedTest
  @CsvSource({
    "ink, paper, 7",
    "ink, field, 7",
    "ink, recess, 7",
    "ink-soft, paper, 4.5",
    "ink-soft, field, 4.5",
    "ink-soft, recess, 4.5",
    "ink-soft, wash, 4.5",
    "paper, ink, 4.5",
    "brass, paper, 4.5",
    "danger, paper, 4.5",
    "danger, danger-tint, 4.5",
    "warning, paper, 4.5",
    "warning, warning-tint, 4.5",
    "note, paper, 4.5",
    "note, note-tint, 4.5",
    "good, paper, 4.5",
    "fine, paper, 3",
    "fine, field, 3",
    "focus, paper, 3",
    "focus, field, 3",
    "focus, recess, 3",
    "line, body, 3",
    "brass-film, film, 3"
  })
  void contrastIsEnough(String ink, String ground, double least) throws IOException {
    for (String palette : new String[] {"palette-day", "palette-night"}) {
      Map<String, String> colours = colours(palette);
      assertThat(contrast(colours.get(ink), colours.get(ground)))
          .as(palette)
          .isGreaterThanOrEqualTo(least);
    }
  }

  /** Both have the same meanings, and no other style sheet names a colour of its own. */
  @ParameterizedTest
  @ValueSource(
      strings = {"workshop", "ribbons", "forms", "drawing", "rig", "problems", "export", "help"})
  void onlyPalettesNameColours(String part) throws IOException {
    assertThat(colours("palette-day").keySet()).isEqualTo(colours("palette-night").keySet());
    assertThat(Pattern.compile("#[0-9a-fA-F]{3,8}\\b|rgba?\\(").matcher(text(part)).find())
        .isFalse();
  }

  /** Dialogs and pop-ups have roots of their own, which ask for the same names. */
  @ParameterizedTest
  @ValueSource(strings = {"palette-day", "palette-night"})
  void everyRootHasThePalette(String palette) throws IOException {
    assertThat(text(palette)).contains("\n.root, .palette {\n");
  }

  private static Map<String, String> colours(String palette) throws IOException {
    Map<String, String> colours = new TreeMap<>();
    Matcher found = COLOUR.matcher(text(palette));
    while (found.find()) {
      colours.put(found.group(1), found.group(2));
    }
    return colours;
  }

  private static String text(String part) throws IOException {
    try (InputStream in =
        PaletteTest.class.getResourceAsStream("/lampwright/app/workshop/" + part + ".css")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  // WCAG 2.2, relative luminance and contrast ratio.
  private static double contrast(String one, String other) {
    double a = luminance(one) + 0.05;
    double b = luminance(other) + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }

  private static double luminance(String hex) {
    int rgb = Integer.parseInt(hex, 16);
    return 0.2126 * linear(rgb >> 16)
        + 0.7152 * linear(rgb >> 8 & 255)
        + 0.0722 * linear(rgb & 255);
  }

  private static double linear(int code) {
    double v = code / 255.0;
    return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
  }
}
