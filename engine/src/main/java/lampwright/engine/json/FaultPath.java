package lampwright.engine.json;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.check.Fault;
import lampwright.engine.check.SafeText;

/** Finds the value that a fault of a record is about. */
final class FaultPath {
  private static final Pattern STEP = Pattern.compile("\\[(\\d+)]|[^.\\[\\]]+");
  private static final Pattern NUMBER = Pattern.compile("-?[0-9.]+(E[+-]?[0-9]+)?|-?Infinity");

  private FaultPath() {}

  /** The value at a path such as {@code frames[2].atMs}, or the last one on the way to it. */
  static Json find(Json from, String path) {
    Json at = from;
    for (Matcher step = STEP.matcher(path); step.find(); ) {
      Optional<Json> next = next(at, step.group(1), step.group());
      if (next.isEmpty()) {
        return at;
      }
      at = next.get();
    }
    return at;
  }

  /** What came, as the file writes it where that is what the fault is about. */
  static String shown(Json at, Fault fault) {
    boolean same = at instanceof Json.Text text && text.value().equals(fault.value());
    boolean number = at instanceof Json.Num && NUMBER.matcher(fault.value()).matches();
    return same || number ? at.shown() : SafeText.text(fault.value());
  }

  private static Optional<Json> next(Json at, String index, String name) {
    if (index == null) {
      return at instanceof Json.Obj object ? object.find(name) : Optional.empty();
    }
    // Nine digits are an index; no list is longer.
    return at instanceof Json.Arr list && Integer.parseInt(index) < list.items().size()
        ? Optional.of(list.items().get(Integer.parseInt(index)))
        : Optional.empty();
  }
}
