package lampwright.app.command;

import java.io.PrintWriter;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Place;

/** Findings as lines for people. */
final class FindingText {
  private FindingText() {}

  /** One line: {@code a.lampwright.json: caution: rig.supplyVolts at line 5, column 20: ...}. */
  static String line(String source, Finding finding) {
    String place = finding.place().map(Place::words).map(words -> words + ": ").orElse("");
    return source + ": " + finding.severity().key() + ": " + place + finding.text();
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
