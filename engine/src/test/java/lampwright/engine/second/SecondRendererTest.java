package lampwright.engine.second;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** The program's bytes are those of a renderer that was written from docs/rendering.md alone. */
class SecondRendererTest {
  private static final Path ROOT = Path.of("..");
  private static final String ENDING = ".lampwright.json";
  private static final Page SAMPLES =
      Page.of("rendering.md").section("### Frame tables of the samples");
  private static final Page TEST_PROJECT =
      Page.of("rendering.md").section("### Frame tables of a test project");

  static Stream<Path> guideProjects() throws IOException {
    return projectsIn("docs/guide");
  }

  static Stream<Path> samples() throws IOException {
    return projectsIn("samples");
  }

  private static Stream<Path> projectsIn(String folder) throws IOException {
    List<Path> files = new ArrayList<>();
    try (DirectoryStream<Path> found =
        Files.newDirectoryStream(ROOT.resolve(folder), "*" + ENDING)) {
      found.forEach(files::add);
    }
    return files.stream().sorted();
  }

  @ParameterizedTest
  @MethodSource("guideProjects")
  void guideProjectsHaveTheBytesOfThePage(Path file) throws IOException {
    sameTables(Files.readString(file));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void samplesHaveTheBytesAndSumsOfThePage(Path file) throws IOException, GeneralSecurityException {
    String name = file.getFileName().toString().replace(ENDING, "");
    assertSums(SAMPLES, name, Files.readString(file));
  }

  @ParameterizedTest
  @ValueSource(strings = {"A", "B", "C"})
  void testProjectHasTheBytesAndSumsOfThePage(String version)
      throws IOException, GeneralSecurityException {
    assertSums(TEST_PROJECT, version, testProject(version));
  }

  /** Rules together as no example has them; more seeds differ neither (150 were tried). */
  @ParameterizedTest
  @ValueSource(longs = {0, 1, 2, 3, 4, 5})
  void randomProjectsHaveTheBytesOfThePage(long seed) {
    sameTables(RandomProject.text(seed));
  }

  /** The tables of the page say what is expected, not the program. */
  private static void assertSums(Page page, String name, String text)
      throws GeneralSecurityException {
    Map<String, List<int[]>> tables = sameTables(text);
    List<List<String>> rows =
        page.rows().stream().filter(row -> row.size() == 5 && row.get(0).equals(name)).toList();
    assertThat(rows).extracting(row -> row.get(1)).containsExactlyElementsOf(tables.keySet());
    for (List<String> row : rows) {
      List<int[]> table = tables.get(row.get(1));
      assertThat(List.of(table.size() + "", table.get(0).length + "", sha256(table)))
          .as(row.get(1))
          .isEqualTo(row.subList(2, 5));
    }
  }

  private static String testProject(String version) {
    String text = TEST_PROJECT.listing();
    String line = text.lines().filter(one -> one.contains("supplyLimit")).findFirst().orElseThrow();
    return TEST_PROJECT.rows().stream()
        .filter(row -> row.size() == 2 && row.get(0).equals(version))
        .map(row -> row.get(1).startsWith("\"") ? text.replace(line, row.get(1)) : text)
        .findFirst()
        .orElseThrow();
  }

  private static String sha256(List<int[]> table) throws GeneralSecurityException {
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    table.forEach(frame -> Arrays.stream(frame).forEach(b -> digest.update((byte) b)));
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The tables of all scenes by the second renderer, which are those of the program. */
  private static Map<String, List<int[]>> sameTables(String text) {
    ReadResult read = ProjectReader.read("p", text.getBytes(UTF_8));
    assertThat(read.project()).as(read.problems().toString()).isPresent();
    Project program = read.project().orElseThrow();
    JsonNode project = Json.read(text);
    SecondRenderer second = new SecondRenderer(project);
    Map<String, List<int[]>> tables = new LinkedHashMap<>();
    for (int s = 0; s < program.scenes().size(); s++) {
      FrameTable table = FrameTable.of(program.rig(), program.scenes().get(s));
      JsonNode scene = project.get("scenes").get(s);
      String id = scene.get("id").stringValue();
      tables.put(id, second.table(scene));
      assertThat(difference(table, tables.get(id))).as(id).isEmpty();
    }
    return tables;
  }

  /** The first byte that differs. */
  private static Optional<String> difference(FrameTable table, List<int[]> frames) {
    if (table.frameCount() != frames.size()) {
      return Optional.of(table.frameCount() + " frames, by the page " + frames.size());
    }
    FrameCursor cursor = table.cursor();
    byte[] bytes = new byte[frames.get(0).length];
    for (int f = 0; f < frames.size(); f++) {
      cursor.next(bytes);
      for (int i = 0; i < bytes.length; i++) {
        int page = frames.get(f)[i];
        if ((bytes[i] & 0xFF) != page) {
          return Optional.of(
              "frame %d byte %d: %d, by the page %d".formatted(f, i, bytes[i] & 0xFF, page));
        }
      }
    }
    return Optional.empty();
  }
}
