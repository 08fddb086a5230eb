package lampwright.app.workshop.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.disk.Leftovers;
import lampwright.engine.disk.Owner;
import lampwright.engine.disk.RegularFile;

/** Where recovery files lie: beside the project, or in the state folder if they can't lie there. */
public final class Recoveries {
  private static final String SUFFIX = ".recovery";
  private static final int MAX_FOUND = 100;
  private static final long MAX_FOUND_SIZE = Recovery.MAX_BYTES;

  private final Path folder;
  private final Owner self;

  /**
   * @param state the user's state folder
   * @param self this process
   */
  public Recoveries(Path state, Owner self) {
    this.folder = state.resolve("recovery");
    this.self = self;
  }

  /** Removes what killed processes left of writing in the state folder. */
  public static void tidy(Path state) {
    Leftovers.sweep(state);
    Leftovers.sweep(state.resolve("recovery"));
  }

  /** This process. */
  public Owner self() {
    return self;
  }

  /** The hidden file beside a project: {@code .tractor.lampwright.json.recovery}. */
  public static Path beside(Path file) {
    return file.resolveSibling("." + file.getFileName() + SUFFIX);
  }

  /**
   * A place in the state folder that is this process's own.
   *
   * @param number a project of this process
   */
  public Path inState(int number) {
    return folder.resolve(self.pid() + "-" + self.started().toEpochMilli() + "-" + number + SUFFIX);
  }

  /** What lies beside a file, if anything does. */
  public Optional<FoundRecovery> findBeside(Path file) throws IOException {
    Path place = beside(file);
    return Files.exists(place) ? Optional.of(read(place)) : Optional.empty();
  }

  /** What ended processes left in the state folder, the newest first. */
  public List<FoundRecovery> findInState() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    List<Path> places;
    try (Stream<Path> all = Files.list(folder)) {
      places =
          all.filter(place -> place.toString().endsWith(SUFFIX))
              .sorted(Comparator.reverseOrder())
              .toList();
    }
    List<FoundRecovery> found = new ArrayList<>();
    long size = 0;
    for (Path place : places) {
      // What is left is found once these are settled.
      if (found.size() == MAX_FOUND || size > MAX_FOUND_SIZE) {
        break;
      }
      FoundRecovery each = read(place);
      size += each.content().map(c -> c.text().length()).orElse(0);
      if (each.content().filter(c -> c.owner().equals(self) || c.owner().isAlive()).isEmpty()) {
        found.add(each);
      }
    }
    found.sort(
        Comparator.comparing(
                (FoundRecovery each) -> each.content().map(Recovery::written).orElse(Owner.NEVER))
            .reversed());
    return found;
  }

  /** What ended processes left in the state folder for this file. */
  public List<FoundRecovery> findInState(Path file) throws IOException {
    return findInState().stream()
        .filter(each -> each.content().flatMap(Recovery::file).filter(file::equals).isPresent())
        .toList();
  }

  /** Moves a damaged one out of the way, to a name that nothing has. Returns that. */
  public static Path setAside(Path place) throws IOException {
    for (int number = 1; ; number++) {
      Path aside = place.resolveSibling(place.getFileName() + ".damaged-" + number);
      if (Files.notExists(aside)) {
        return Files.move(place, aside);
      }
    }
  }

  private static FoundRecovery read(Path place) throws IOException {
    try {
      // What is no UTF-8 becomes other characters, which the hash in it shows.
      String text = RegularFile.text(place, Recovery.MAX_BYTES);
      return new FoundRecovery(place, Recovery.read(text));
    } catch (RegularFile.Refused noRecovery) {
      return new FoundRecovery(place, Optional.empty());
    }
  }
}
