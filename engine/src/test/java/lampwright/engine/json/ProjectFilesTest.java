package lampwright.engine.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProjectFilesTest {
  private static final Project PROJECT =
      Project.of("Küste", Rig.of(List.of(), List.of(DriverOutput.of("o")), List.of()));

  @TempDir private Path folder;

  @Test
  void savedProjectIsReadAgain() throws IOException {
    Path file = folder.resolve("a.lampwright.json");

    ProjectFiles.save(PROJECT, file);

    assertThat(ProjectReader.read(file).project()).contains(PROJECT);
    assertThat(folder).isDirectoryContaining("glob:**/a.lampwright.json");
    assertThat(folder.toFile().list()).hasSize(1);
  }

  @Test
  void savingReplacesTheFile() throws IOException {
    Path file = Files.writeString(folder.resolve("a.lampwright.json"), "old");

    ProjectFiles.save(PROJECT, file);

    assertThat(file).hasContent(ProjectWriter.write(PROJECT));
    assertThat(folder.toFile().list()).hasSize(1);
  }

  private static void link(Path link, Path to) {
    try {
      Files.createSymbolicLink(link, to);
    } catch (UnsupportedOperationException | IOException noLinks) {
      abort("this system makes no links: " + noLinks);
    }
  }

  @Test
  void savingThroughALinkKeepsTheLink() throws IOException {
    Path file = Files.writeString(folder.resolve("real.lampwright.json"), "old");
    Path link = folder.resolve("link.lampwright.json");
    link(link, file);

    ProjectFiles.save(PROJECT, link);

    assertThat(link).isSymbolicLink();
    assertThat(file).hasContent(ProjectWriter.write(PROJECT));
  }

  @Test
  void savingThroughADanglingLinkMakesTheFileThatItNames() throws IOException {
    Files.createDirectory(folder.resolve("real"));
    Path file = folder.resolve("real").resolve("a.lampwright.json");
    Path link = folder.resolve("link.lampwright.json");
    link(link, Path.of("real", "a.lampwright.json"));

    ProjectFiles.save(PROJECT, link);

    assertThat(link).isSymbolicLink();
    assertThat(file).hasContent(ProjectWriter.write(PROJECT));
  }

  @Test
  void linkToItselfIsRefused() throws IOException {
    Path link = folder.resolve("link.lampwright.json");
    link(link, link);

    assertThatThrownBy(() -> ProjectFiles.save(PROJECT, link))
        .isInstanceOf(IOException.class)
        .hasMessage(link + ": could not write: too many links to links");
    assertThat(link).isSymbolicLink();
  }

  @Test
  void longestNameThatAFileCanHaveIsSaved() throws IOException {
    Path file = folder.resolve("n".repeat(239) + ".lampwright.json");

    ProjectFiles.save(PROJECT, file);

    assertThat(ProjectReader.read(file).project()).contains(PROJECT);
  }

  @Test
  void folderIsNotOverwritten() {
    assertThatThrownBy(() -> ProjectFiles.save(PROJECT, folder))
        .isInstanceOf(IOException.class)
        .hasMessage(folder + ": could not write: it is a folder");
  }

  @Test
  void missingFolderIsNamed() {
    Path file = folder.resolve("none").resolve("a.lampwright.json");

    assertThatThrownBy(() -> ProjectFiles.save(PROJECT, file))
        .isInstanceOf(IOException.class)
        .hasMessage(file + ": could not write: there is no such folder");
  }
}
