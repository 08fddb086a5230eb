package lampwright.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words with places for figures: {@code draws {current}}. Immutable. */
public final class Template {
  private static final Pattern PLACE = Pattern.compile("\\{([a-zA-Z0-9]+)}");

  private final String text;
  // Texts and names of figures in turn, beginning and ending with a text.
  private final List<String> parts = new ArrayList<>();

  Template(String text) {
    this.text = text;
    Matcher place = PLACE.matcher(text);
    int end = 0;
    while (place.find()) {
      parts.add(text.substring(end, place.start()));
      parts.add(place.group(1));
      end = place.end();
    }
    parts.add(text.substring(end));
  }

  /** The words with the names of their figures in braces. */
  public String text() {
    return text;
  }

  /** The names of its figures. */
  public Set<String> names() {
    Set<String> names = new LinkedHashSet<>();
    for (int i = 1; i < parts.size(); i += 2) {
      names.add(parts.get(i));
    }
    return names;
  }

  String fill(Map<String, Figure> figures) {
    StringBuilder filled = new StringBuilder(parts.get(0));
    for (int i = 1; i < parts.size(); i += 2) {
      Figure figure = figures.get(parts.get(i));
      filled.append(figure == null ? "" : figure.text()).append(parts.get(i + 1));
    }
    return filled.toString();
  }
}
