package lampwright.app.command;

import java.io.PrintWriter;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Location;

/** Findings as lines for people. */
final class FindingText {
  /** How many findings of one code are listed. */
  static final int MOST_OF_A_CODE = 100;

  private FindingText() {}

  /** One line: {@code a.lampwright.json: caution: rig.supplyVolts at line 5, column 20: ...}. */
  static String line(String source, Finding finding) {
    String place = finding.place().map(Location::words).map(words -> words + ": ").orElse("");
    return source + ": " + finding.severity().key() + ": " + place + finding.text();
  }

  /**
   * Prints a line for each finding. A project can have hundreds of thousands: of each kind the
   * first are listed, and the rest counted.
   */
  static void print(String source, List<Finding> findings, PrintWriter out) {
    Map<Code, Integer> seen = new EnumMap<>(Code.class);
    for (Finding finding : findings) {
      if (seen.merge(finding.code(), 1, Integer::sum) <= MOST_OF_A_CODE) {
        out.println(line(source, finding));
      }
    }
    seen.forEach(
        (code, count) -> {
          if (count > MOST_OF_A_CODE) {
            int more = count - MOST_OF_A_CODE;
            out.println(
                source + ": " + code.severity().key() + ": " + more + " more [" + code.key() + "]");
          }
        });
  }

  /** An indented paragraph: what is the case, the limit with its source, what can be done. */
  static void paragraph(Finding finding, PrintWriter out) {
    String sign = finding.severity().problem() ? "!" : "-";
    out.println(
        "  "
            + sign
            + " "
            + finding.severity().key()
            + ": "
            + finding.subjectAndTime()
            + ": "
            + finding.what()
            + " ["
            + finding.code().key()
            + "]");
    if (!finding.limitWithSource().isEmpty()) {
      out.println("    " + finding.limitWithSource());
    }
    if (!finding.remedy().isEmpty()) {
      out.println("    -> " + finding.remedy());
    }
  }
}
