package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.exporters.picture.TypeMeasure;

/** Names cut to a width, so that two that differ still differ. */
final class ShortNames {
  private static final String CUT = "…";

  private final TypeMeasure measure;
  private final double size;
  private final double room;

  ShortNames(TypeMeasure measure, double size, double room) {
    this.measure = measure;
    this.size = size;
    this.room = room;
  }

  /** Names as they are shown, by name: whole, or cut in the middle. */
  Map<String, String> of(Iterable<String> names) {
    Map<String, String> cut = new LinkedHashMap<>();
    names.forEach(name -> cut.put(name, middle(name)));
    Map<String, List<String>> same = new LinkedHashMap<>();
    cut.forEach((name, text) -> same.computeIfAbsent(text, t -> new ArrayList<>()).add(name));
    for (List<String> alike : same.values()) {
      if (alike.size() > 1) {
        apart(alike, cut);
      }
    }
    return cut;
  }

  /** One name, cut in the middle if it is too wide. */
  String middle(String name) {
    if (fits(name)) {
      return name;
    }
    int low = 0;
    int high = name.length() - 1;
    while (low < high) {
      int kept = (low + high + 1) / 2;
      if (fits(middle(name, kept))) {
        low = kept;
      } else {
        high = kept - 1;
      }
    }
    return middle(name, low);
  }

  private static String middle(String name, int kept) {
    int head = (kept + 1) / 2;
    return name.substring(0, head) + CUT + name.substring(name.length() - (kept - head));
  }

  // Names that differ only where they were cut show that part; numbers tell what is still alike.
  private void apart(List<String> alike, Map<String, String> cut) {
    int from = firstDifference(alike);
    Map<String, Integer> seen = new LinkedHashMap<>();
    for (String name : alike) {
      String text = CUT + name.substring(Math.min(from, name.length()));
      while (text.length() > 2 && !fits(text)) {
        text = text.substring(0, text.length() - 1);
      }
      int number = seen.merge(text, 1, Integer::sum);
      cut.put(name, number == 1 ? text : number + text);
    }
  }

  private static int firstDifference(List<String> names) {
    String first = names.get(0);
    int at = 0;
    while (at < first.length()) {
      int here = at;
      if (names.stream()
          .anyMatch(name -> name.length() <= here || name.charAt(here) != first.charAt(here))) {
        break;
      }
      at++;
    }
    return at;
  }

  private boolean fits(String text) {
    return measure.width(text, size) <= room;
  }
}
