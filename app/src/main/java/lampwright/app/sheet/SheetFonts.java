package lampwright.app.sheet;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The type of the printed sheet. It comes with the program, so that a sheet is the same on every
 * machine: Latin letters in that of the window, other alphabets and signs, then ideographs, in
 * wider ones.
 */
final class SheetFonts {
  private record Face(String family, String file, int weight) {}

  private static final String FOLDER = "/lampwright/app/fonts/";

  private static final List<Face> FACES =
      List.of(
          new Face("sheet", "ibm-plex-sans-condensed-400.ttf", 400),
          new Face("sheet", "ibm-plex-sans-condensed-600.ttf", 700),
          new Face("alphabets", "dejavu-sans.ttf", 400),
          new Face("alphabets", "dejavu-sans.ttf", 700),
          new Face("ideographs", "droid-sans-fallback.ttf", 400),
          new Face("ideographs", "droid-sans-fallback.ttf", 700));

  /** What a style sheet names. */
  static final String FAMILIES = "sheet, alphabets, ideographs";

  private SheetFonts() {}

  /** Makes the fonts known to a renderer, which embeds of each what it uses. */
  static void register(PdfRendererBuilder builder) {
    for (Face face : FACES) {
      builder.useFont(
          () -> open(face.file()), face.family(), face.weight(), FontStyle.NORMAL, true);
    }
  }

  private static InputStream open(String file) {
    return Objects.requireNonNull(SheetFonts.class.getResourceAsStream(FOLDER + file), file);
  }

  /** The same text with each character that no font has as its code point: {@code U+1F69C}. */
  static String shown(String text) {
    if (text.codePoints().allMatch(SheetFonts::isPlain)) {
      return text;
    }
    List<CmapLookup> known = FACES.stream().map(Face::file).distinct().map(SheetFonts::cmap).toList();
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if (isPlain(c) || known.stream().anyMatch(font -> font.getGlyphId(c) != 0)) {
                shown.appendCodePoint(c);
              } else {
                shown.append(String.format(Locale.ROOT, "U+%04X", c));
              }
            });
    return shown.toString();
  }

  // ASCII and what Latin-1 has beyond its controls.
  private static boolean isPlain(int c) {
    return c < 0x100;
  }

  private static CmapLookup cmap(String file) {
    try (InputStream in = open(file);
        TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in))) {
      return font.getUnicodeCmapLookup();
    } catch (IOException damaged) {
      throw new UncheckedIOException(damaged);
    }
  }
}
