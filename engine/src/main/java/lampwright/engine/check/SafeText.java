package lampwright.engine.check;

import com.google.common.collect.ImmutableRangeSet;
import com.google.common.collect.Range;
import java.util.Locale;

/**
 * Text of a file fit for a message: nothing in it moves a cursor, colours a terminal, turns the
 * direction of writing or hides.
 */
public final class SafeText {
  /** The longest message shown, in characters. */
  public static final int MAX_MESSAGE = 2000;

  /** The longest text shown, in characters. */
  public static final int MAX_TEXT = 60;

  /** The longest file name shown, in characters. */
  public static final int MAX_NAME = 300;

  // Letters and marks without a width: Default_Ignorable_Code_Point of Unicode 15
  // (DerivedCoreProperties.txt), as far as the general category does not tell already.
  private static final ImmutableRangeSet<Integer> INVISIBLE =
      ImmutableRangeSet.<Integer>builder()
          .add(Range.singleton(0x34f))
          .add(Range.closed(0x115f, 0x1160))
          .add(Range.closed(0x17b4, 0x17b5))
          .add(Range.closed(0x180b, 0x180f))
          .add(Range.singleton(0x3164))
          .add(Range.closed(0xfe00, 0xfe0f))
          .add(Range.singleton(0xffa0))
          .add(Range.closed(0xe0000, 0xe0fff))
          .build();

  private SafeText() {}

  /** The text, cut to so many characters, with all but plain characters written as escapes. */
  public static String text(String text, int max) {
    StringBuilder shown = new StringBuilder();
    for (int i = 0; i < text.length(); ) {
      if (shown.length() >= max) {
        return shown.append("...").toString();
      }
      int c = text.codePointAt(i);
      if (plain(c)) {
        shown.appendCodePoint(c);
      } else {
        shown.append(String.format(Locale.ROOT, c > 0xffff ? "\\u{%x}" : "\\u%04x", c));
      }
      i += Character.charCount(c);
    }
    return shown.toString();
  }

  /** The text, cut to {@link #MAX_TEXT} characters, as {@link #text(String, int)} does. */
  public static String text(String text) {
    return text(text, MAX_TEXT);
  }

  /** The text in quotation marks, as JSON writes it. */
  public static String quoted(String text) {
    // Cut first: what comes may be long.
    String start = text.length() > 2 * MAX_TEXT ? text.substring(0, 2 * MAX_TEXT) : text;
    String escaped = start.replace("\\", "\\\\").replace("\"", "\\\"");
    return '"' + text(escaped) + '"';
  }

  /** Whether a character shows as itself and changes nothing around it. */
  public static boolean plain(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> !INVISIBLE.contains(codePoint);
    };
  }
}
