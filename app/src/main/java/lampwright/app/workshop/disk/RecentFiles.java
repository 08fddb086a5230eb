package lampwright.app.workshop.disk;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import lampwright.engine.disk.RegularFile;
import lampwright.engine.disk.WholeFile;

/** The project files opened or saved last, the last one first, one URI a line. */
public final class RecentFiles {
  /** The most that are kept. */
  public static final int MAX = 10;

  private static final int MAX_BYTES = 1 << 20;

  private final Path place;

  /**
   * @param state the user's state folder
   */
  public RecentFiles(Path state) {
    this.place = state.resolve("recent");
  }

  /**
   * The files, at most {@link #MAX}; those that are gone among them, for a disk may be away for a
   * while. Lines that name no file are left out.
   *
   * @throws IOException if there is a list that can't be read
   */
  public List<Path> read() throws IOException {
    if (Files.notExists(place)) {
      return List.of();
    }
    return RegularFile.text(place, MAX_BYTES)
        .lines()
        .map(RecentFiles::path)
        .flatMap(Optional::stream)
        .distinct()
        .limit(MAX)
        .toList();
  }

  /** Puts a file first. Returns the list as it is then. */
  public List<Path> add(Path file) throws IOException {
    List<Path> files = new ArrayList<>();
    files.add(file);
    files.addAll(readable());
    List<Path> kept = files.stream().distinct().limit(MAX).toList();
    WholeFile.write(place, kept.stream().map(p -> p.toUri() + "\n").collect(Collectors.joining()));
    return kept;
  }

  // A list that can't be read is no reason not to begin a new one.
  private List<Path> readable() {
    try {
      return read();
    } catch (IOException damaged) {
      return List.of();
    }
  }

  private static Optional<Path> path(String line) {
    try {
      return Optional.of(Path.of(URI.create(Objects.requireNonNull(line))));
    } catch (IllegalArgumentException | FileSystemNotFoundException noFile) {
      return Optional.empty();
    }
  }
}
