package lampwright.exporters.proof;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was found wrong, in words: the first few, and how many in all. */
final class Faults {
  private static final int MOST_IN_WORDS = 12;

  private final List<String> words = new ArrayList<>();
  private int count;

  void add(String format, Object... arguments) {
    if (words.size() < MOST_IN_WORDS) {
      words.add(String.format(Locale.ROOT, format, arguments));
    }
    count++;
  }

  int count() {
    return count;
  }

  ImmutableList<String> words() {
    return ImmutableList.copyOf(words);
  }
}
