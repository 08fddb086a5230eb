package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import lampwright.engine.document.Project;

/**
 * Writes projects as the text of a project file. Equal projects give equal text, and reading it
 * gives an equal project.
 */
public final class ProjectWriter {
  private ProjectWriter() {}

  /** The text of the file, with lines ended by LF, to be stored in UTF-8. */
  public static String write(Project project) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put(FileVersion.FIELD, BigDecimal.valueOf(Project.VERSION));
    fields.putAll(Project.SHAPE.plain(project));
    StringBuilder text = new StringBuilder();
    Out.of(fields).lay(text, 0, Out.COLUMNS);
    return text.append('\n').toString();
  }
}
