package lampwright.app.sheet;

import com.openhtmltopdf.bidi.BidiReorderer;
import com.openhtmltopdf.bidi.BidiSplitter;
import com.openhtmltopdf.bidi.BidiTextRun;
import java.text.Bidi;
import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Which parts of a text run from right to left, by the Java library (Unicode Standard Annex 9), and
 * their letters in the order in which they are printed. Arabic letters keep the form that they have
 * alone, and the renderer has a number after such a part at its right.
 */
final class BidiText implements BidiSplitter {
  /** Puts the letters of a run from right to left into the order of printing. */
  static final class Reorderer implements BidiReorderer {
    private static final String MIRRORED = "()[]{}<>\u00ab\u00bb";

    /** Letter by letter with the marks on it, and brackets the other way round. */
    @Override
    public String reorderRTLTextToLTR(String text) {
      BreakIterator letters = BreakIterator.getCharacterInstance(Locale.ROOT);
      letters.setText(text);
      StringBuilder printed = new StringBuilder();
      for (int end = letters.last(), start = letters.previous();
          start != BreakIterator.DONE;
          end = start, start = letters.previous()) {
        String letter = text.substring(start, end);
        int bracket = MIRRORED.indexOf(letter);
        printed.append(bracket < 0 ? letter : MIRRORED.substring(bracket ^ 1, (bracket ^ 1) + 1));
      }
      return printed.toString();
    }

    @Override
    public String shapeText(String text) {
      return text;
    }

    @Override
    public String deshapeText(String text) {
      return text;
    }

    @Override
    public boolean isLiveImplementation() {
      return true;
    }
  }

  private List<BidiTextRun> runs = List.of();

  @Override
  public void setParagraph(String text, byte direction) {
    if (text.isEmpty()) {
      runs = List.of();
      return;
    }
    // Sheets are written from left to right; a name in Hebrew does not turn its line.
    Bidi bidi = new Bidi(text, Bidi.DIRECTION_LEFT_TO_RIGHT);
    int count = bidi.getRunCount();
    byte[] levels = new byte[count];
    BidiTextRun[] found = new BidiTextRun[count];
    for (int i = 0; i < count; i++) {
      levels[i] = (byte) bidi.getRunLevel(i);
      int start = bidi.getRunStart(i);
      found[i] =
          new BidiTextRun(start, bidi.getRunLimit(i) - start, levels[i] % 2 == 0 ? LTR : RTL);
    }
    Bidi.reorderVisually(levels, 0, found, 0, count);
    runs = new ArrayList<>(Arrays.asList(found));
  }

  @Override
  public int countTextRuns() {
    return runs.size();
  }

  @Override
  public BidiTextRun getVisualRun(int index) {
    return runs.get(index);
  }

  @Override
  public byte getBaseDirection(String text) {
    return LTR;
  }
}
