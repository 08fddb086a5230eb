package lampwright.engine.json;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Optional;
import lampwright.engine.check.SafeText;
import org.jspecify.annotations.Nullable;

/**
 * Finds what makes a text no JSON by RFC 8259, in words for people. It is asked only when a text
 * was refused, so it keeps nothing and need not be fast.
 */
final class SyntaxCheck {
  private static final int END = -1;
  private static final int MAX_SHOWN = 40;
  private static final String CURLY = "\u201c\u201d\u201e\u2018\u2019\u201a\u00ab\u00bb";
  private static final String ESCAPES = "\"\\/bfnrt";
  private static final String ALLOWED_ESCAPES =
      "must be \\\", \\\\, \\/, \\b, \\f, \\n, \\r, \\t or \\u with four hexadecimal digits";

  /** What may come next. */
  private enum Next {
    VALUE,
    VALUE_OF_FIELD,
    FIRST_ENTRY,
    FIRST_NAME,
    ENTRY,
    NAME,
    COLON,
    SEPARATOR,
    NOTHING
  }

  /** An object or list that is not closed. */
  private record Open(boolean object, Position at) {
    String words() {
      return "the " + (object ? "object" : "list") + " from " + at.words();
    }

    char close() {
      return object ? '}' : ']';
    }
  }

  private final Reader in;
  private final Deque<Open> open = new ArrayDeque<>();
  private Next next = Next.VALUE;
  private int c;
  private int line = 1;
  private int column = 1;
  private Position start = new Position(1, 1);
  private Position comma = start;
  private boolean commaAfterDigit;
  private boolean afterDigit;
  private @Nullable SyntaxFault fault;

  private SyntaxCheck(Reader in) {
    this.in = in;
  }

  /** The first fault of a text; empty if it has none. */
  static Optional<SyntaxFault> first(Reader in) throws IOException {
    SyntaxCheck check = new SyntaxCheck(in);
    check.c = in.read();
    while (check.fault == null && check.step()) {}
    return Optional.ofNullable(check.fault);
  }

  /** Of what comes after the end of a project. */
  static SyntaxFault more(int line, int column) {
    return new SyntaxFault(
        line, column, "more after the end of the project", "must be removed", "");
  }

  /** Takes one sign or value; false at the end. */
  private boolean step() throws IOException {
    while (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      afterDigit = false;
      take();
    }
    start = new Position(line, column);
    if (c == END) {
      if (next != Next.NOTHING && !open.isEmpty()) {
        Open last = open.element();
        found(
            "the file ends inside " + (last.object ? "an object" : "a list"),
            "must close " + last.words() + " with " + last.close());
      }
      return false;
    }
    if (c == '/' || c == '#') {
      found("a comment", "must be removed: JSON has no comments");
      return false;
    }
    switch (next) {
      case FIRST_NAME, NAME -> name();
      case COLON -> colon();
      case SEPARATOR -> separator();
      case NOTHING -> fault = more(line, column);
      default -> value();
    }
    return true;
  }

  private void value() throws IOException {
    switch (c) {
      case '{', '[' -> {
        open.push(new Open(c == '{', start));
        next = c == '{' ? Next.FIRST_NAME : Next.FIRST_ENTRY;
        take();
      }
      case '"' -> {
        string();
        ended();
      }
      case ']', '}' -> close(next == Next.FIRST_ENTRY, next == Next.ENTRY);
      case ',' -> {
        if (next == Next.VALUE_OF_FIELD) {
          noValue();
        } else {
          found("a comma without an entry before it", "must be removed");
        }
      }
      default -> {
        if (!quote()) {
          word();
        }
      }
    }
  }

  private void name() throws IOException {
    if (c == '"') {
      string();
      next = Next.COLON;
    } else if (c == '}' || c == ']') {
      close(next == Next.FIRST_NAME, next == Next.NAME);
    } else if (c == ',') {
      found("a comma without an entry before it", "must be removed");
    } else if (Character.isDigit(c) && commaAfterDigit && next == Next.NAME && follows(comma)) {
      foundAt(comma, "a comma within a number", "must be a decimal point");
    } else if (Character.isLetter(c) || c == '_' || c == '$') {
      found("'" + shown(token()) + "' without quotes", "names must be in double quotes");
    } else if (!quote()) {
      unexpected("the name of a field in double quotes");
    }
  }

  private void colon() throws IOException {
    if (c == ':') {
      take();
      next = Next.VALUE_OF_FIELD;
    } else {
      found("no colon", "a name and its value must be separated by a colon");
    }
  }

  private void separator() throws IOException {
    if (c == ',') {
      comma = start;
      commaAfterDigit = afterDigit;
      next = open.element().object ? Next.NAME : Next.ENTRY;
      take();
    } else if (c == ']' || c == '}') {
      close(true, false);
    } else if (Character.isLetterOrDigit(c) || "\"{[-".indexOf(c) >= 0) {
      found("no comma before this entry", "entries must be separated by commas");
    } else if (!quote()) {
      unexpected("a comma or the closing " + open.element().close());
    }
  }

  private void close(boolean mayClose, boolean afterComma) throws IOException {
    if (open.isEmpty()) {
      unexpected("a value");
      return;
    }
    Open last = open.element();
    if (c != last.close()) {
      unexpected(last.close() + ", for " + last.words());
    } else if (afterComma) {
      foundAt(comma, "a comma after the last entry", "must be removed");
    } else if (mayClose) {
      open.pop();
      take();
      ended();
    } else {
      noValue();
    }
  }

  private void noValue() {
    found("no value", "the name before it must have a value");
  }

  /** After a value. */
  private void ended() {
    next = open.isEmpty() ? Next.NOTHING : Next.SEPARATOR;
  }

  /** Quotes that JSON has not. */
  private boolean quote() {
    if (c == '\'') {
      found("single quotes", "must be double quotes");
    } else if (CURLY.indexOf(c) >= 0) {
      found("a curly quote", "must be a straight double quote");
    }
    return fault != null;
  }

  private void string() throws IOException {
    take();
    while (c != '"' && fault == null) {
      if (c == END || c == '\n' || c == '\r') {
        found("a string that is not closed", "must end with a double quote on its line");
      } else if (c < ' ') {
        foundAt(
            new Position(line, column),
            c == '\t' ? "a tab in a string" : "a control character in a string",
            "must be written as " + (c == '\t' ? "\\t" : String.format(Locale.ROOT, "\\u%04x", c)));
      } else if (c == '\\') {
        escape();
      } else {
        take();
      }
    }
    take();
  }

  private void escape() throws IOException {
    Position at = new Position(line, column);
    take();
    if (c == 'u') {
      StringBuilder shown = new StringBuilder("the escape \\u");
      take();
      for (int i = 0; i < 4; i++) {
        if (c != END) {
          shown.append(shown(Character.toString(c)));
        }
        if (c > 'f' || Character.digit(c, 16) < 0) {
          foundAt(at, shown.toString(), "must have four hexadecimal digits");
          return;
        }
        take();
      }
    } else if (ESCAPES.indexOf(c) >= 0) {
      take();
    } else {
      String shown = c == END ? "" : shown(Character.toString(c));
      foundAt(at, "the escape \\" + shown, ALLOWED_ESCAPES);
    }
  }

  /** A number, or true, false or null. */
  private void word() throws IOException {
    int first = c;
    String token = token();
    if (token.isEmpty()) {
      unexpected("a value");
      return;
    }
    // What is no number but named as one is left to the reader of its field.
    if (token.matches("true|false|null|-?(0|[1-9]\\d*)(\\.\\d+)?([eE][+-]?\\d+)?")
        || token.matches("NaN|[+-]?Infinity|[+-]?INF")) {
      afterDigit = Character.isDigit(token.charAt(token.length() - 1));
      ended();
      return;
    }
    String lower = token.toLowerCase(Locale.ROOT);
    if (lower.matches("true|false|null")) {
      found("'" + shown(token) + "'", "must be " + lower + ", in lower case");
    } else if (Character.isDigit(first) || "+-.".indexOf(first) >= 0) {
      found("'" + shown(token) + "' is not a number", number(token));
    } else {
      fault =
          new SyntaxFault(
              start.line(),
              start.column(),
              "'" + shown(token) + "'",
              "must be a string in double quotes, a number, true, false or null",
              shown(token));
    }
  }

  private static String number(String token) {
    if (token.startsWith("+")) {
      return "must have no plus sign";
    } else if (token.matches("-?0\\d+(\\.\\d+)?")) {
      return "must have no leading zeros";
    } else if (token.matches("-?\\.\\d+.*")) {
      return "must have a digit before the decimal point";
    } else if (token.matches("-?\\d+\\.([eE].*)?")) {
      return "must have a digit after the decimal point";
    }
    return token.matches("-?0[xXoObB][0-9a-fA-F]+")
        ? "must be decimal"
        : "must be written as in 12, -0.5 or 2e3";
  }

  /** The characters up to the next sign or space: all, since a long number is one too. */
  private String token() throws IOException {
    StringBuilder token = new StringBuilder();
    while (Character.isLetterOrDigit(c) || (c != END && "+-._$".indexOf(c) >= 0)) {
      token.append((char) c);
      take();
    }
    return token.toString();
  }

  private boolean follows(Position sign) {
    return start.line() == sign.line() && start.column() == sign.column() + 1;
  }

  private void unexpected(String allowed) {
    found("'" + shown(Character.toString(c)) + "'", "must be " + allowed);
  }

  private void found(String value, String allowed) {
    foundAt(start, value, allowed);
  }

  private void foundAt(Position at, String value, String allowed) {
    fault = new SyntaxFault(at.line(), at.column(), value, allowed, "");
  }

  private static String shown(String text) {
    return SafeText.text(text, MAX_SHOWN);
  }

  /** Goes on to the next character; CR, LF and CR LF end a line. */
  private void take() throws IOException {
    int taken = c;
    c = in.read();
    if (taken == '\n' || (taken == '\r' && c != '\n')) {
      line++;
      column = 1;
    } else {
      column++;
    }
  }
}
