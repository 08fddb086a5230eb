package lampwright.engine.project;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** Collects the problems of a file; keeps those that stand first in it, however many there are. */
final class Problems {
  private static final Comparator<Draft> BY_POSITION =
      Comparator.comparingInt(Draft::line)
          .thenComparingInt(Draft::column)
          .thenComparingInt(Draft::sequence);

  private final Kept errors = new Kept();
  private final Kept cautions = new Kept();
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
    errors.add(
        new Draft(Severity.ERROR, where, line, column, sequence++, value, allowed, name, known));
  }

  /** Adds a caution. */
  void caution(Where where, int line, int column, String value, String allowed) {
    cautions.add(
        new Draft(
            Severity.CAUTION, where, line, column, sequence++, value, allowed, "", List.of()));
  }

  boolean anyError() {
    return errors.count > 0;
  }

  /** How many problems were added in all. */
  int count() {
    return errors.count + cautions.count;
  }

  /** The problems to list, by position: errors before cautions where there is no room for all. */
  List<Problem> listed() {
    int room = ReadResult.MAX_PROBLEMS - errors.first.size();
    List<Draft> drafts = new ArrayList<>(errors.first);
    drafts.addAll(cautions.first.stream().sorted(BY_POSITION).limit(room).toList());
    return drafts.stream().sorted(BY_POSITION).map(Draft::problem).toList();
  }

  private static final class Kept {
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
      Severity severity,
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
          severity, where.toString(), value, allowed, line, column, NearName.of(name, known));
    }
  }
}
