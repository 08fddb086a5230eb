package lampwright.app.startup;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartArchiveTest {
  @TempDir Path temp;
  private Path cache;
  private StartArchive own;

  @BeforeEach
  void makeOwn() throws IOException {
    cache = Files.createDirectory(temp.resolve("cache"));
    own = archive("commands-own", "none of these jars is there /x.jar");
  }

  @Test
  void archivesOfRemovedProgramFoldersAreRemoved() throws IOException {
    archive("commands-old", temp.resolve("old folder/lib/a.jar") + " 10 20");
    archive("window-old", temp.resolve("old folder/lib/a.jar") + " none");
    own.removeOthersOfNoUse();
    assertThat(files()).allMatch(name -> name.startsWith("commands-own"));
    assertThat(files()).hasSize(3);
  }

  @Test
  void archivesOfFoldersThatAreThereStay() throws IOException {
    Path jar = Files.createFile(temp.resolve("b.jar"));
    archive("commands-other", temp.resolve("gone.jar") + " 10 20\n" + jar + " 30 40");
    own.removeOthersOfNoUse();
    assertThat(files()).hasSize(6);
  }

  @Test
  void whatIsNotUnderstoodStays() throws IOException {
    archive("commands-next-form", "2\nno jar");
    Files.writeString(cache.resolve("commands-empty.key"), "");
    Files.writeString(cache.resolve("commands-later.key"), "2\n/gone.jar 1 2\n");
    Files.createFile(cache.resolve("notes.txt"));
    own.removeOthersOfNoUse();
    assertThat(files()).hasSize(9);
  }

  /** An archive, its lock and its key, made for some jars. */
  private StartArchive archive(String name, String jars) throws IOException {
    StartArchive archive = new StartArchive(cache.resolve(name));
    Files.createFile(archive.archive());
    Files.createFile(archive.lock());
    Files.writeString(cache.resolve(name + ".key"), "1\n/java\nvendor\n" + jars + "\n");
    return archive;
  }

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(cache)) {
      return files.map(file -> file.getFileName().toString()).toList();
    }
  }
}
