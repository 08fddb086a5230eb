package lampwright.engine.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;

/**
 * What reading a project file gave.
 *
 * @param source the file's name, as given; made harmless
 * @param project the project; empty if there is any problem
 * @param problems sorted by position, at most {@link #MAX_PROBLEMS}
 * @param unlisted how many more there are
 * @param positions where the values of the project are
 */
public record ReadResult(
    String source,
    Optional<Project> project,
    List<Problem> problems,
    int unlisted,
    Positions positions) {
  /** The most problems that are listed. */
  public static final int MAX_PROBLEMS = 100;

  public ReadResult {
    source = SafeText.text(source, SafeText.MAX_NAME);
    problems = List.copyOf(problems);
  }

  /** Of a file that holds no project. */
  ReadResult(String source, List<Problem> problems, int unlisted) {
    this(source, Optional.empty(), problems, unlisted, Positions.NONE);
  }

  /** Every problem in one line, such as {@code a.lampwright.json: error: name: ...}. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (Problem problem : problems) {
      lines.add(source + ": error: " + problem.text());
    }
    if (unlisted > 0) {
      lines.add(
          source + ": and " + unlisted + (unlisted == 1 ? " more problem" : " more problems"));
    }
    return lines;
  }
}
