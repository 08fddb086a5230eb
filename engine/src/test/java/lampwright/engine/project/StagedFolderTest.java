package lampwright.engine.project;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StagedFolderTest {
  @TempDir Path parent;

  @Test
  void folderAppearsWholeAndReplacesOurOwn() throws IOException {
    write("one", true);
    write("two", true);
    assertThat(parent.resolve("show/src/a.c")).hasContent("two");
    assertThat(parent.toFile().list()).containsExactly("show");
  }

  @Test
  void withoutCommitNothingIsLeft() throws IOException {
    write("one", false);
    assertThat(parent).isEmptyDirectory();
  }

  @Test
  void folderWithoutOurMarkIsRefusedUntouched() throws IOException {
    Files.createDirectories(parent.resolve("show"));
    assertThatThrownBy(() -> write("one", true))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("is no folder of ours");
    assertThat(parent.resolve("show")).isEmptyDirectory();
  }

  @Test
  void fileThatIsNotOursIsKept() throws IOException {
    write("one", true);
    Files.writeString(parent.resolve("show/mine.c"), "mine");
    assertThatThrownBy(() -> write("two", true))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("mine.c: is no file of ours");
    assertThat(parent.resolve("show/mine.c")).hasContent("mine");
    assertThat(parent.resolve("show/src/a.c")).hasContent("one");
  }

  private void write(String text, boolean commit) throws IOException {
    try (StagedFolder files =
        StagedFolder.in(parent, "show", "mark", "ours", List.of("mark", "src/a.c"))) {
      for (String name : List.of("mark", "src/a.c")) {
        try (OutputStream out = files.open(name)) {
          out.write((name.equals("mark") ? "ours\n" : text).getBytes(UTF_8));
        }
      }
      if (commit) {
        files.commit();
      }
    }
  }
}
