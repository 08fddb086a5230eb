package lampwright.app.workshop.model.shelf;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import lampwright.app.workshop.model.ribbon.Placeable;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Preset;
import lampwright.engine.document.PresetUse;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.rig.LampFunction;

/**
 * What can be taken from the shelf.
 *
 * @param source where it is kept
 * @param name as it is kept; of a pattern its kind
 * @param uses what it is for
 * @param words other words by which it is found
 * @param pattern what is placed
 */
public record ShelfEntry(
    Source source, String name, List<PresetUse> uses, List<String> words, Pattern pattern) {
  private static final int MAX = 200;

  /** Where an entry is kept. */
  public enum Source {
    /** A kind of pattern. */
    PATTERN,
    /** A preset that comes with the program. */
    PROGRAM,
    /** A preset of the project. */
    PROJECT,
    /** A preset of the user's folder. */
    USER
  }

  public ShelfEntry {
    uses = List.copyOf(uses);
    words = List.copyOf(words);
  }

  static ShelfEntry ofKind(String kind) {
    return new ShelfEntry(
        Source.PATTERN,
        kind,
        List.of(),
        List.of(),
        Placeable.ofKind(kind).on(LampFunction.SPECIAL_WARNING));
  }

  static ShelfEntry of(Source source, Preset preset) {
    return new ShelfEntry(source, preset.name(), preset.uses(), preset.words(), preset.pattern());
  }

  /** Its name as the window shows it. */
  public String title() {
    return source == Source.PATTERN ? capital(Titles.ofKind(name)) : SafeText.text(name, MAX);
  }

  /** Whether the builder saved it. */
  public boolean own() {
    return source == Source.PROJECT || source == Source.USER;
  }

  /** What is placed. */
  public Placeable placeable() {
    return source == Source.PATTERN
        ? Placeable.ofKind(name)
        : new Placeable(title(), pattern, false);
  }

  /** Whether all words of a search are in its name, its kind, its uses or its own words. */
  public boolean matches(String query) {
    Texts texts = Texts.of("shelf");
    String all =
        Stream.of(
                Stream.of(title(), Titles.ofKind(pattern.kind())),
                Stream.of(texts.get("kind." + pattern.kind())),
                uses.stream().map(use -> texts.get("use." + use.key())),
                words.stream())
            .flatMap(part -> part)
            .reduce("", (a, b) -> a + " " + b)
            .toLowerCase(Locale.ROOT);
    return Stream.of(query.strip().toLowerCase(Locale.ROOT).split("\\s+")).allMatch(all::contains);
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
