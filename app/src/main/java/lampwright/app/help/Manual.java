package lampwright.app.help;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.jspecify.annotations.Nullable;

/**
 * The pages of the documentation, the same files as in the folder {@code docs}, written in
 * CommonMark with tables.
 */
public final class Manual {
  /** The page about the window. */
  public static final String GUIDE = "workshop";

  /** The page about findings, which has a row for each code. */
  public static final String FINDINGS = "findings";

  private static final String MARKDOWN = ".md";

  private static final List<String> PAGES =
      List.of(
          GUIDE,
          "guide/parts",
          "guide/README",
          "situations",
          "live",
          "guide/patterns",
          "guide/trouble",
          "guide/words",
          FINDINGS,
          "formats",
          "rendering",
          "packed",
          "numbers",
          "performance",
          "changelog");

  private static final Parser PARSER =
      Parser.builder().extensions(List.of(TablesExtension.create())).build();

  /**
   * A page.
   *
   * @param id the name of its file, without its ending
   * @param title its first heading
   * @param text all of it
   */
  public record Page(String id, String title, Node text) {}

  /**
   * A place in the pages.
   *
   * @param page its id
   * @param anchor a heading or a code in a table of it; empty for its beginning
   */
  public record Place(String page, String anchor) {}

  private Manual() {}

  /** The ids of all pages, in the order in which they are listed. */
  public static List<String> pages() {
    return PAGES;
  }

  /**
   * Reads a page.
   *
   * @throws IllegalArgumentException if there is none of this id
   */
  public static Page page(String id) {
    if (!PAGES.contains(id)) {
      throw new IllegalArgumentException("page: " + id + ": must be one of " + PAGES);
    }
    String file = id + MARKDOWN;
    try (InputStream in = Objects.requireNonNull(resource(file), file).openStream()) {
      Node text = PARSER.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      return new Page(id, title(text).orElse(id), text);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /**
   * Where a link of a page leads.
   *
   * @param page the id of the page that it is in
   * @param link as written there, such as {@code ../formats.md#feed}
   * @return empty if it leads out of the pages
   */
  public static Optional<Place> target(String page, String link) {
    int hash = link.indexOf('#');
    String anchor = hash < 0 ? "" : link.substring(hash + 1);
    String file = hash < 0 ? link : link.substring(0, hash);
    if (file.isEmpty()) {
      return Optional.of(new Place(page, anchor));
    }
    if (!file.endsWith(MARKDOWN) || file.contains(":")) {
      return Optional.empty();
    }
    String id =
        URI.create(page).resolve(file.substring(0, file.length() - MARKDOWN.length())).toString();
    return PAGES.contains(id) ? Optional.of(new Place(id, anchor)) : Optional.empty();
  }

  /** A picture of a page by the name that the page gives it, if the program carries it. */
  public static Optional<URL> picture(String name) {
    // Pages of a folder name pictures from there.
    return Optional.ofNullable(resource(name.startsWith("../") ? name.substring(3) : name));
  }

  /** The text of a part of a page, without marks. */
  public static String plain(Node part) {
    StringBuilder text = new StringBuilder();
    part.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Text run) {
            text.append(run.getLiteral());
          }

          @Override
          public void visit(Code code) {
            text.append(code.getLiteral());
          }

          @Override
          public void visit(SoftLineBreak line) {
            text.append(' ');
          }
        });
    return text.toString().strip();
  }

  /** The name by which links point at a heading: lower case, hyphens for spaces. */
  public static String anchor(Heading heading) {
    return plain(heading)
        .toLowerCase(Locale.ROOT)
        .replaceAll("[^\\p{Alnum} _-]", "")
        .replace(' ', '-');
  }

  private static Optional<String> title(Node text) {
    return text.getFirstChild() instanceof Heading heading
        ? Optional.of(plain(heading))
        : Optional.empty();
  }

  private static @Nullable URL resource(String name) {
    return Manual.class.getResource("/lampwright/app/docs/" + name);
  }
}
