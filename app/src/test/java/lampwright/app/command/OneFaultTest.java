package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.PackService;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.problems.ProblemsModel;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.work.LatestWorker;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.firmware.FirmwareMemory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Rigs with one fault each: every place that shows findings shows exactly that one. The faults were
 * put in by hand; what has to be found was written down before any program was asked.
 */
class OneFaultTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  // A line of the list of warnings in README.md: its severity and its code.
  private static final Pattern LISTED =
      Pattern.compile("- \\*\\*(error|danger|caution)\\*\\* .*\\\\\\[([a-z0-9-]+)\\\\]");

  @TempDir Path folder;

  /** A fault: what is set, and the findings that follow, notes left out. */
  record Fault(String name, JsonNode project, List<String> found) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Fault> faults() throws IOException {
    JsonNode all;
    try (InputStream in =
        OneFaultTest.class.getResourceAsStream("/lampwright/app/review/one-fault.json")) {
      all = JSON.readTree(in);
    }
    List<Fault> faults = new ArrayList<>();
    faults.add(new Fault("none", all.get("base"), List.of()));
    for (JsonNode fault : all.get("faults")) {
      JsonNode project = all.get("base").deepCopy();
      for (Map.Entry<String, JsonNode> set : fault.get("set").properties()) {
        put(project, set.getKey(), set.getValue());
      }
      List<String> found = new ArrayList<>();
      fault.get("found").forEach(f -> found.add(f.asString()));
      faults.add(new Fault(fault.get("set").toString(), project, found));
    }
    return faults.stream();
  }

  private static void put(JsonNode root, String path, JsonNode value) {
    String[] steps = path.split("\\.", -1);
    JsonNode at = root;
    for (int i = 0; i < steps.length - 1; i++) {
      at = at.isArray() ? at.get(Integer.parseInt(steps[i])) : at.get(steps[i]);
    }
    String last = steps[steps.length - 1];
    if (at instanceof ArrayNode list) {
      int place = Integer.parseInt(last);
      if (place == list.size()) {
        list.add(value);
      } else {
        list.set(place, value);
      }
    } else if (value.isNull()) {
      ((ObjectNode) at).remove(last);
    } else {
      ((ObjectNode) at).set(last, value);
    }
  }

  private Path file(Fault fault) throws IOException {
    return Files.writeString(
        folder.resolve("p.lampwright.json"), JSON.writeValueAsString(fault.project()));
  }

  private static List<String> problems(Iterable<JsonNode> findings) {
    List<String> words = new ArrayList<>();
    for (JsonNode finding : findings) {
      String severity = finding.get("severity").asString();
      if (!severity.equals("note")) {
        words.add(
            severity
                + " "
                + finding.get("code").asString()
                + ": "
                + finding.get("subject").asString());
      }
    }
    return words;
  }

  @ParameterizedTest
  @MethodSource("faults")
  void checkFindsIt(Fault fault) throws IOException {
    Run run = Run.of("check", file(fault), "--json");
    assertThat(problems(JSON.readTree(run.out()).get("findings")))
        .containsExactlyInAnyOrderElementsOf(fault.found());
    boolean error = fault.found().stream().anyMatch(f -> f.startsWith("error"));
    assertThat(run.code()).isEqualTo(error ? 1 : 0);
    assertThat(Run.of("check", file(fault), "--strict").code())
        .isEqualTo(fault.found().isEmpty() ? 0 : 1);
  }

  @ParameterizedTest
  @MethodSource("faults")
  void measureFindsIt(Fault fault) throws IOException {
    JsonNode root = JSON.readTree(Run.of("measure", file(fault), "--json").out());
    List<String> found = new ArrayList<>(problems(root.get("findings")));
    root.get("scenes").forEach(scene -> found.addAll(problems(scene.get("findings"))));
    assertThat(found).containsExactlyInAnyOrderElementsOf(fault.found());
  }

  @ParameterizedTest
  @MethodSource("faults")
  void workshopFindsIt(Fault fault) throws IOException, CancelledException {
    Project project = ProjectReader.read(file(fault)).project().orElseThrow();
    Bench bench = new Bench(project);
    SceneReport report = SceneReport.of(FrameTable.of(project.rig(), project.scenes().get(0)));
    ProblemsModel model =
        new ProblemsModel(
            bench,
            new Playhead(bench),
            new SimpleObjectProperty<>(Optional.of(report)),
            new SimpleBooleanProperty(),
            new SimpleObjectProperty<>(Optional.of(packed(project))),
            new LatestWorker(Runnable::run, Runnable::run, LatestWorker.Ending.ASK));
    assertThat(
            model.rows().stream()
                .map(row -> row.finding())
                .filter(f -> f.severity().problem())
                .map(f -> f.severity().key() + " " + f.code().key() + ": " + f.about()))
        .containsExactlyInAnyOrderElementsOf(fault.found());
  }

  // What the room that packs finds out in the background.
  private static PackService.Packed packed(Project project) throws CancelledException {
    return new PackService.Packed(
        1, false, FirmwareMemory.findings(project, project.scenes(), Progress.SILENT));
  }

  @ParameterizedTest
  @MethodSource("faults")
  void exportShowsIt(Fault fault) throws IOException {
    Path project = file(fault);
    Run run = Run.of("export", project, "--to", folder.resolve("out"), "--as", "bin");
    List<String> shown =
        run.err()
            .lines()
            .filter(line -> !line.contains(": note: "))
            .map(line -> line.replaceFirst(".*\\[([a-z0-9-]+)]$", "$1"))
            .toList();
    assertThat(shown)
        .containsExactlyInAnyOrderElementsOf(
            fault.found().stream()
                .map(f -> f.replaceFirst("^\\w+ ([a-z0-9-]+): .*", "$1"))
                .toList());
    assertThat(run.out().toLowerCase(Locale.ROOT)).doesNotContain("safe");
  }

  @ParameterizedTest
  @MethodSource("faults")
  void readmeOfTheFirmwareListsIt(Fault fault) throws IOException {
    Path out = folder.resolve("out");
    Run run = Run.of("export", file(fault), "--to", out, "--as", "firmware");
    // Without a controller a note says what a firmware would be made for, and why that is refused.
    if (fault.found().stream().anyMatch(f -> f.startsWith("error"))
        || !fault.project().get("rig").has("controller")) {
      assertThat(run.code()).isEqualTo(1);
      assertThat(out.resolve("firmware")).doesNotExist();
      return;
    }
    assertThat(run.code()).isZero();
    String readme = Files.readString(out.resolve("firmware/README.md"));
    List<String> listed =
        readme
            .lines()
            .map(LISTED::matcher)
            .filter(Matcher::matches)
            .map(m -> m.group(1) + " " + m.group(2))
            .toList();
    assertThat(listed)
        .containsExactlyInAnyOrderElementsOf(
            fault.found().stream().map(f -> f.replaceFirst(": .*", "")).toList());
  }
}
