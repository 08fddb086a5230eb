package lampwright.engine.json;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Fault;
import lampwright.engine.document.Project;

/** The version of the format in files of ours: a newer one is refused, and nothing else is read. */
final class FileVersion {
  static final String FIELD = "lampwright";

  private FileVersion() {}

  /** The one problem of a file that a newer program wrote. */
  static Optional<Problems> newer(Json json) {
    if (!(json instanceof Json.Obj root)
        || root.find(FIELD).flatMap(ValueKind.WHOLE::read).orElse(0L) <= Project.VERSION) {
      return Optional.empty();
    }
    Problems problems = new Problems();
    Json at = root.find(FIELD).orElseThrow();
    new Located(at, Where.ROOT.field(FIELD), problems)
        .error(
            at.shown(),
            "must be " + Project.VERSION + "; this file was written by a newer Lampwright");
    return Optional.of(problems);
  }

  /** Checks the version of a file that is not newer. */
  static void check(Fields f) {
    String allowed = "must be " + Project.VERSION;
    ValueKind<Long> number =
        new ValueKind<>(Json.Num.class, allowed, List.of(), ValueKind.WHOLE::read);
    long version = f.required(FIELD, number).orElse((long) Project.VERSION);
    if (version != Project.VERSION) {
      f.report(new Fault(FIELD, String.valueOf(version), allowed), References.NONE);
    }
  }
}
