package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Preset;
import lampwright.engine.document.Project;
import lampwright.engine.document.ProjectFaults;

/**
 * Files of presets: an object with the version of the format and the presets as a project file has
 * them.
 */
public final class PresetFile {
  /** The largest file that is read: 4 MiB. */
  public static final int MAX_BYTES = 4 << 20;

  /**
   * What reading gave.
   *
   * @param presets empty if there is any problem
   * @param problems in lines that name the file; empty if it is sound
   */
  public record Result(List<Preset> presets, List<String> problems) {
    public Result {
      presets = List.copyOf(presets);
      problems = List.copyOf(problems);
    }
  }

  private PresetFile() {}

  /**
   * Reads the bytes of a file of presets.
   *
   * @param sourceName the file's name, for messages
   */
  public static Result read(String sourceName, byte[] bytes) {
    Problems problems = new Problems();
    if (bytes.length > MAX_BYTES) {
      problems.error(
          Where.ROOT,
          1,
          1,
          "a file of " + bytes.length + " bytes",
          "must be at most " + MAX_BYTES + " bytes");
      return result(sourceName, List.of(), problems);
    }
    Optional<Json> json = JsonTree.parse(bytes, problems);
    if (json.isEmpty()) {
      return result(sourceName, List.of(), problems);
    }
    Optional<Problems> newer = FileVersion.newer(json.get());
    if (newer.isPresent()) {
      return result(sourceName, List.of(), newer.get());
    }
    Fields f = new Located(json.get(), Where.ROOT, problems).fields();
    FileVersion.check(f);
    f.expect(List.of(Project.PRESETS.name()));
    List<Preset> presets = new ShapeReader().field(Project.PRESETS, f).orElse(List.of());
    f.close();
    ProjectFaults.ofPresets(presets).forEach(fault -> f.report(fault, References.NONE));
    return result(sourceName, presets, problems);
  }

  /** The text of a file, with lines ended by LF, to be stored in UTF-8. */
  public static String write(List<Preset> presets) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put(FileVersion.FIELD, BigDecimal.valueOf(Project.VERSION));
    fields.put(Project.PRESETS.name(), Project.PRESETS.type().plain(presets));
    StringBuilder text = new StringBuilder();
    Out.of(fields).lay(text, 0, Out.COLUMNS);
    return text.append('\n').toString();
  }

  private static Result result(String sourceName, List<Preset> presets, Problems problems) {
    List<String> lines =
        new ReadResult(
                SafeText.text(sourceName, SafeText.MAX_NAME),
                problems.listed(),
                problems.unlisted())
            .lines();
    return new Result(lines.isEmpty() ? presets : List.of(), lines);
  }
}
