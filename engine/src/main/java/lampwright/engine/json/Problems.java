package lampwright.engine.json;

import com.google.common.collect.ComparisonChain;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import lampwright.engine.check.Suggestion;

/** Collects the problems of a file; keeps those that are first in it, however many there are. */
final class Problems {
  // Java makes code for comparators of its own at each start (decision 42).
  private static final Comparator<Draft> BY_POSITION =
      (a, b) ->
          ComparisonChain.start()
              .compare(a.line(), b.line())
              .compare(a.column(), b.column())
              .compare(a.sequence(), b.sequence())
              .result();

  private final FirstN errors = new FirstN();
  private int sequence;

  /** Adds an error at a position. */
  void error(Where where, int line, int column, String value, String allowed) {
    error(where, line, column, value, allowed, "", List.of());
  }

  /** Adds an error about a name, with the names that are known. */
  void error(
      Where where,
      int line,
      int column,
      String value,
      String allowed,
      String name,
      Collection<String> known) {
    errors.add(new Draft(where, line, column, sequence++, value, allowed, name, known));
  }

  boolean anyError() {
    return errors.count > 0;
  }

  /** How many problems there are besides those listed. */
  int unlisted() {
    return errors.count - errors.first.size();
  }

  /** The problems to list, by position. */
  List<Problem> listed() {
    return errors.first.stream().sorted(BY_POSITION).map(Draft::problem).toList();
  }

  private static final class FirstN {
    private final PriorityQueue<Draft> first = new PriorityQueue<>(BY_POSITION.reversed());
    private int count;

    void add(Draft draft) {
      count++;
      first.add(draft);
      if (first.size() > ReadResult.MAX_PROBLEMS) {
        first.remove();
      }
    }
  }

  /** A problem whose texts are made only if it is listed. */
  private record Draft(
      Where where,
      int line,
      int column,
      int sequence,
      String value,
      String allowed,
      String name,
      Collection<String> known) {
    Problem problem() {
      return new Problem(
          where.toString(), value, allowed, new Position(line, column), Suggestion.of(name, known));
    }
  }
}
