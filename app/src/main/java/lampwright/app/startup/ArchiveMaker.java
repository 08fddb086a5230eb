package lampwright.app.startup;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Makes the archive of loaded classes, in a process of its own beside the program: what commands
 * load is found out by a {@link Rehearsal}, what the window loads is in the list that the window's
 * process wrote. Of several that begin at once one does it. Each file is moved into place whole.
 */
public final class ArchiveMaker {
  /** The first Java whose caches also hold what is linked; before, archives hold classes alone. */
  private static final int LINKED_CACHES = 25;

  private static final long MAX_SECONDS = 300;

  private final StartArchive archive;
  private final Path folder;

  private ArchiveMaker(StartArchive archive) {
    this.archive = archive;
    this.folder = archive.workshop();
  }

  /** Makes the archive that the system property names. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Optional<StartArchive> named = StartArchive.ofThisProcess();
    if (named.isPresent()) {
      new ArchiveMaker(named.get()).makeAlone(StartArchive.key());
      Optional<Path> list = StartArchive.listOfThisProcess();
      if (list.isPresent()) {
        Files.deleteIfExists(list.get());
      }
    }
  }

  private void makeAlone(String key) throws IOException, InterruptedException {
    try (FileChannel file =
            FileChannel.open(archive.lock(), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = file.tryLock()) {
      if (lock != null && !archive.current(key)) {
        Files.createDirectories(folder);
        try {
          make(key);
        } finally {
          delete(folder);
        }
      }
    }
  }

  private void make(String key) throws IOException, InterruptedException {
    Optional<Path> list = StartArchive.listOfThisProcess();
    if (list.isPresent()) {
      Path kept = folder.resolve("classes");
      Files.move(list.get(), kept, StandardCopyOption.REPLACE_EXISTING);
      dump(kept);
    } else if (StartArchive.ofWindow()) {
      // The next window writes a list where there is no archive.
      Files.deleteIfExists(archive.archive());
      return;
    } else if (Runtime.version().feature() >= LINKED_CACHES) {
      recordAndLink();
    } else {
      Path classes = folder.resolve("classes");
      rehearse(List.of(), "-XX:DumpLoadedClassList=" + classes);
      dump(classes);
    }
    // Also where it failed: it would do so again.
    archive.keep(key);
    archive.removeOthersOfNoUse();
  }

  // This collector's heap is the only one that archives take objects from.
  private void dump(Path classes) throws IOException, InterruptedException {
    Path made = folder.resolve("archive");
    run(
        ProgramStart.of(
            Rehearsal.class,
            List.of(
                "-Xshare:dump",
                "-XX:+UseG1GC",
                "-XX:SharedClassListFile=" + classes,
                "-XX:SharedArchiveFile=" + made)));
    place(made, archive.archive());
    Files.deleteIfExists(archive.cache());
  }

  private void recordAndLink() throws IOException, InterruptedException {
    Path recorded = folder.resolve("recorded");
    Path made = folder.resolve("cache");
    // All of such a cache is loaded at each start, and picocli, which it refuses, is looked for.
    rehearse(
        archive.ofShortCommands() ? List.of(Rehearsal.PLAIN) : List.of(),
        // How often methods were called: the second compiler would profit, the first one loses
        // time.
        "-XX:+UnlockDiagnosticVMOptions",
        "-XX:-AOTRecordTraining",
        "-XX:AOTMode=record",
        "-XX:AOTConfiguration=" + recorded);
    run(
        ProgramStart.of(
            Rehearsal.class,
            List.of(
                "-XX:+UseSerialGC",
                "-XX:AOTMode=create",
                "-XX:AOTConfiguration=" + recorded,
                "-XX:AOTCache=" + made)));
    place(made, archive.cache());
    Files.deleteIfExists(archive.archive());
  }

  private void rehearse(List<String> arguments, String... options)
      throws IOException, InterruptedException {
    // As the launcher has them.
    List<String> all =
        new ArrayList<>(List.of("-XX:+UseSerialGC", "-Djdk.reflect.useNativeAccessorOnly=true"));
    all.addAll(List.of(options));
    List<String> words = ProgramStart.of(Rehearsal.class, all);
    words.addAll(arguments);
    run(words);
  }

  private void run(List<String> words) throws IOException, InterruptedException {
    Process process = ProgramStart.start(words, folder);
    if (!process.waitFor(MAX_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly().waitFor();
    }
  }

  private static void place(Path made, Path to) throws IOException {
    if (Files.exists(made)) {
      Files.move(made, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } else {
      Files.deleteIfExists(to);
    }
  }

  private static void delete(Path folder) throws IOException {
    List<Path> inside;
    try (Stream<Path> all = Files.walk(folder)) {
      inside = all.toList();
    }
    for (int i = inside.size() - 1; i >= 0; i--) {
      Files.deleteIfExists(inside.get(i));
    }
  }
}
