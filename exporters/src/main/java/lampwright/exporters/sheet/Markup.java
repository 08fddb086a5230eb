package lampwright.exporters.sheet;

/**
 * A document in the making that is HTML (WHATWG) and well-formed XML at once. Text goes in escaped,
 * so that no name can open or close anything.
 */
final class Markup {
  private final StringBuilder out = new StringBuilder();

  /** Opens an element; {@code tag} with its attributes, which hold no text of a project. */
  Markup open(String tag) {
    out.append('<').append(tag).append('>');
    return this;
  }

  /** Closes an element and ends the line. */
  Markup close(String name) {
    out.append("</").append(name).append(">\n");
    return this;
  }

  /** Markup that holds no text of a project. */
  Markup raw(String markup) {
    out.append(markup);
    return this;
  }

  /** Text of any kind. */
  Markup text(String text) {
    text.codePoints().forEach(this::character);
    return this;
  }

  /** A whole element with nothing but text. */
  Markup element(String tag, String text) {
    open(tag).text(text);
    int space = tag.indexOf(' ');
    return close(space < 0 ? tag : tag.substring(0, space));
  }

  // What XML 1.0 (W3C, production Char) does not allow, and the controls that HTML does not.
  private void character(int c) {
    switch (c) {
      case '&' -> out.append("&amp;");
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '"' -> out.append("&quot;");
      case '\'' -> out.append("&#39;");
      default -> {
        boolean control = c < 0x20 || (c >= 0x7f && c < 0xa0);
        boolean none = (c >= 0xd800 && c < 0xe000) || (c & 0xfffe) == 0xfffe;
        boolean noncharacter = none || (c >= 0xfdd0 && c <= 0xfdef);
        out.appendCodePoint(c == '\n' || !(control || noncharacter) ? c : 0xfffd);
      }
    }
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
