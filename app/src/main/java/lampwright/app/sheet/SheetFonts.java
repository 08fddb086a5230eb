package lampwright.app.sheet;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The type of the printed sheet. It comes with the program, so that a sheet is the same on every
 * machine: Latin letters in that of the window, other alphabets and signs, then hangul and
 * ideographs, in wider ones. The last two are only opened for a text that needs them.
 */
final class SheetFonts {
  /** What a style sheet names; a family that is not there is passed over. */
  static final String FAMILIES = "sheet, alphabets, hangul, ideographs";

  private static final String FOLDER = "/lampwright/app/fonts/";
  private static final int PLAIN = 400;
  private static final int BOLD = 700;

  private record Face(String family, List<Integer> weights, TrueTypeFont font, CmapLookup glyphs) {
    static Face open(String family, String file, Integer... weights) throws IOException {
      try (InputStream in =
          Objects.requireNonNull(SheetFonts.class.getResourceAsStream(FOLDER + file), file)) {
        TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in));
        // A ligature would be one sign for who searches or copies the text.
        font.setEnableGsub(false);
        return new Face(family, List.of(weights), font, font.getUnicodeCmapLookup());
      }
    }

    boolean has(int codePoint) {
      return glyphs.getGlyphId(codePoint) != 0;
    }
  }

  private final List<Face> faces;

  private SheetFonts(List<Face> faces) {
    this.faces = faces;
  }

  /** The fonts that a text needs, as far as there are any for it. */
  static SheetFonts of(String text) throws IOException {
    List<Face> faces = new ArrayList<>();
    faces.add(Face.open("sheet", "ibm-plex-sans-condensed-400.ttf", PLAIN));
    faces.add(Face.open("sheet", "ibm-plex-sans-condensed-600.ttf", BOLD));
    faces.add(Face.open("alphabets", "dejavu-sans.ttf", PLAIN, BOLD));
    SheetFonts usual = new SheetFonts(faces);
    if (!text.codePoints().allMatch(usual::has)) {
      faces.add(Face.open("hangul", "nanum-square.ttf", PLAIN, BOLD));
      faces.add(Face.open("ideographs", "droid-sans-fallback.ttf", PLAIN, BOLD));
    }
    return usual;
  }

  // Line feeds have no glyph.
  private boolean has(int codePoint) {
    return codePoint < 0x80 || faces.stream().anyMatch(face -> face.has(codePoint));
  }

  /**
   * Makes the fonts known to a renderer; of each font what is used becomes part of the document.
   */
  void register(PdfRendererBuilder builder, PDDocument document) throws IOException {
    for (Face face : faces) {
      PDFont font = PDType0Font.load(document, face.font(), true);
      for (int weight : face.weights()) {
        builder.useFont(new PDFontSupplier(font), face.family(), weight, FontStyle.NORMAL, true);
      }
    }
  }

  /** The same text with each character that no font has as its code point: {@code U+1F69C}. */
  String shown(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if (has(c)) {
                shown.appendCodePoint(c);
              } else {
                shown.append(String.format(Locale.ROOT, "U+%04X", c));
              }
            });
    return shown.toString();
  }
}
