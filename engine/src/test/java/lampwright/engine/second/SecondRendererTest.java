package lampwright.engine.second;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.document.Project;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** The program's bytes are those of a renderer that was written from docs/rendering.md alone. */
class SecondRendererTest {
  private static final Path ROOT = Path.of("..");

  static Stream<Path> projects() throws IOException {
    List<Path> files = new ArrayList<>();
    for (String folder : List.of("samples", "docs/guide")) {
      try (DirectoryStream<Path> found =
          Files.newDirectoryStream(ROOT.resolve(folder), "*.lampwright.json")) {
        found.forEach(files::add);
      }
    }
    return files.stream().sorted();
  }

  @ParameterizedTest
  @MethodSource("projects")
  void projectFilesHaveTheBytesOfThePage(Path file) throws IOException {
    assertSameBytes(Files.readString(file));
  }

  private static void assertSameBytes(String text) {
    Project program = ProjectReader.read("p", text.getBytes(UTF_8)).project().orElseThrow();
    JsonNode project = Json.read(text);
    SecondRenderer second = new SecondRenderer(project);
    for (int s = 0; s < program.scenes().size(); s++) {
      FrameTable table = FrameTable.of(program.rig(), program.scenes().get(s));
      JsonNode scene = project.get("scenes").get(s);
      assertThat(difference(table, second.table(scene))).as(scene.get("id").stringValue()).isEmpty();
    }
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
