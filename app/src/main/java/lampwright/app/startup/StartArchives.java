package lampwright.app.startup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Has the archive made that the next start of the program is to have. */
public final class StartArchives {
  private StartArchives() {}

  /**
   * To be called when the work of this process is done. Where the launcher named an archive that is
   * not there, or was made for another Java or other jars, a process that makes it is started and
   * not waited for. Nothing happens, and nothing is said, where it can't be made.
   */
  public static void refresh() {
    Optional<StartArchive> named = StartArchive.ofThisProcess();
    if (named.isEmpty()) {
      return;
    }
    StartArchive archive = named.get();
    try {
      if (!archive.current(StartArchive.key())) {
        Files.createDirectories(archive.folder());
        ProgramStart.start(ProgramStart.of(ArchiveMaker.class, options(archive)), archive.folder());
      } else if (StartArchive.listOfThisProcess().isPresent()) {
        // Another window was closed before this one.
        Files.deleteIfExists(StartArchive.listOfThisProcess().get());
      }
    } catch (IOException | UnsupportedOperationException notHere) {
      // As on a disk that can't be written to: each start takes its time.
    }
  }

  private static List<String> options(StartArchive archive) {
    String named = "-D" + StartArchive.PROPERTY + "=" + archive.base();
    Optional<Path> list = StartArchive.listOfThisProcess();
    return list.isEmpty()
        ? List.of(named)
        : List.of(named, "-D" + StartArchive.LIST_PROPERTY + "=" + list.get());
  }
}
