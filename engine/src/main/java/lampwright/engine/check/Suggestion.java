package lampwright.engine.check;

import java.util.Collection;
import java.util.Optional;

/** Finds the name that was perhaps meant. */
public final class Suggestion {
  private static final int MAX_DISTANCE = 2;
  // A file may have thousands of names and a hundred problems.
  private static final int MAX_CANDIDATES = 2000;

  private Suggestion() {}

  /**
   * The candidate nearest to a name, if it is really near: at most two slips of the finger, and
   * less than half of the name. None if the name is itself a candidate: then it is not misspelt.
   */
  public static Optional<String> of(String name, Collection<String> candidates) {
    if (candidates.contains(name)) {
      return Optional.empty();
    }
    String best = null;
    // Of candidates as near, one that only goes on is rather meant, then one of the same length:
    // its letters are swapped or wrong.
    int least = 3 * (MAX_DISTANCE + 1);
    int tried = 0;
    for (String candidate : candidates) {
      if (++tried > MAX_CANDIDATES) {
        break;
      }
      if (Math.abs(candidate.length() - name.length()) <= MAX_DISTANCE) {
        int distance = distance(name, candidate);
        int kind = candidate.startsWith(name) ? 0 : candidate.length() == name.length() ? 1 : 2;
        int rank = 3 * distance + kind;
        if (rank < least && 2 * distance < Math.min(name.length(), candidate.length())) {
          least = rank;
          best = candidate;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /**
   * Damerau-Levenshtein distance (optimal string alignment): characters to insert, delete, replace
   * or swap with their neighbour.
   */
  static int distance(String a, String b) {
    int[] beforeLast = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replaced, 1 + Math.min(last[j], row[j - 1]));
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
        }
      }
      beforeLast = last;
      last = row;
    }
    return last[b.length()];
  }
}
