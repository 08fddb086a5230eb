package lampwright.engine.json;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Checks that bytes are text in UTF-8. */
final class Utf8 {
  private static final int MARK_LENGTH = 3;

  private Utf8() {}

  /** Length of the byte order mark at the start: 3 or 0. */
  static int markLength(byte[] bytes) {
    boolean mark =
        bytes.length >= MARK_LENGTH
            && bytes[0] == (byte) 0xef
            && bytes[1] == (byte) 0xbb
            && bytes[2] == (byte) 0xbf;
    return mark ? MARK_LENGTH : 0;
  }

  /** Reports bytes that are not UTF-8; false if there are such. */
  static boolean check(byte[] bytes, Problems problems) {
    if (isUtf16(bytes)) {
      problems.error(Where.ROOT, 1, 1, "text in UTF-16", "must be saved as UTF-8");
      return false;
    }
    int mark = markLength(bytes);
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes, mark, bytes.length - mark);
    CharBuffer out = CharBuffer.allocate(8192);
    Position position = new Position();
    while (true) {
      CoderResult result = decoder.decode(in, out, true);
      position.pass(out.flip());
      out.clear();
      if (result.isError()) {
        problems.error(
            Where.ROOT,
            position.line,
            position.column,
            String.format(Locale.ROOT, "byte 0x%02X, which is not UTF-8,", in.get(in.position())),
            "the file must be saved as UTF-8");
        return false;
      }
      if (result.isUnderflow()) {
        return true;
      }
    }
  }

  // JSON starts with two characters of ASCII (RFC 4627, section 3), or with a byte order mark.
  private static boolean isUtf16(byte[] bytes) {
    if (bytes.length < 2) {
      return false;
    }
    int first = bytes[0] & 0xff;
    int second = bytes[1] & 0xff;
    return (first == 0xfe && second == 0xff)
        || (first == 0xff && second == 0xfe)
        || (first == 0) != (second == 0);
  }

  /** Line and column of the next character; CR, LF and CR LF end a line. */
  private static final class Position {
    private int line = 1;
    private int column = 1;
    private boolean afterReturn;

    void pass(CharBuffer text) {
      for (int i = 0; i < text.length(); i++) {
        char c = text.charAt(i);
        if (c == '\r' || (c == '\n' && !afterReturn)) {
          line++;
          column = 1;
        } else if (c != '\n') {
          column++;
        }
        afterReturn = c == '\r';
      }
    }
  }
}
