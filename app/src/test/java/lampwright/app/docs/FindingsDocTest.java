package lampwright.app.docs;

import java.io.IOException;
import lampwright.engine.review.Code;
import lampwright.engine.review.Severity;
import lampwright.engine.review.Template;
import org.junit.jupiter.api.Test;

/** docs/findings.md lists every code with its words. */
class FindingsDocTest {
  @Test
  void everyCodeIsListed() throws IOException {
    StringBuilder text = new StringBuilder();
    for (Severity severity : Severity.values()) {
      text.append("\n## ").append(title(severity)).append("\n\n");
      text.append("| code | what is the case | compared with | what to do |\n");
      text.append("| --- | --- | --- | --- |\n");
      for (Code code : Code.values()) {
        if (code.severity() == severity) {
          text.append("| `").append(code.key()).append("` | ");
          text.append(words(code.what())).append(" | ");
          text.append(words(code.limit())).append(" | ");
          text.append(words(code.remedy())).append(" |\n");
        }
      }
    }
    WrittenDoc.check("findings.md", text.append('\n').toString());
  }

  private static String title(Severity severity) {
    return switch (severity) {
      case ERROR -> "Errors";
      case DANGER -> "Dangers";
      case CAUTION -> "Cautions";
      case NOTE -> "Notes";
    };
  }

  // A figure's name in italics: it is "maximumVolts" in JSON.
  private static String words(Template template) {
    return template.text().replaceAll("\\{([a-zA-Z0-9]+)}", "*$1*").replace("|", "\\|");
  }
}
