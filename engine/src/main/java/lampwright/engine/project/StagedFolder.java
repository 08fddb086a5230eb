package lampwright.engine.project;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Writes a folder whole or not at all: beside its place first, then moved there. A folder that
 * stands there already is replaced only if it bears our mark and holds nothing but files that we
 * write. Not for use by several threads.
 */
public final class StagedFolder implements Closeable {
  private final Path place;
  private final Path beside;

  private StagedFolder(Path place, Path beside) {
    this.place = place;
    this.beside = beside;
  }

  /**
   * A folder.
   *
   * @param parent made if it is missing
   * @param name of the folder in it
   * @param markFile relative to the folder: what tells a folder of ours
   * @param markLine the line that it then holds
   * @param files names of all files that may be replaced, relative to the folder
   * @throws IOException if another folder or file stands there, or nothing can be written
   */
  public static StagedFolder in(
      Path parent, String name, String markFile, String markLine, Collection<String> files)
      throws IOException {
    Files.createDirectories(parent);
    Path place = parent.resolve(name);
    if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
      refuseOthers(place, markFile, markLine, Set.copyOf(files));
    }
    Path beside = parent.resolve("." + name + "." + Long.toHexString(System.nanoTime()));
    return new StagedFolder(place, Files.createDirectory(beside));
  }

  private static void refuseOthers(Path place, String markFile, String line, Set<String> files)
      throws IOException {
    Path mark = place.resolve(markFile);
    if (!Files.isRegularFile(mark) || !Files.readAllLines(mark).contains(line)) {
      throw new IOException(
          place + ": is no folder of ours: needs another place, or move it out of the way");
    }
    try (Stream<Path> all = Files.walk(place)) {
      Optional<Path> strange =
          all.filter(file -> !Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS))
              .filter(file -> !files.contains(named(place, file)))
              .findFirst();
      if (strange.isPresent()) {
        throw new IOException(
            strange.get() + ": is no file of ours and would be lost: move it out of the way");
      }
    }
  }

  private static String named(Path place, Path file) {
    return place.relativize(file).toString().replace('\\', '/');
  }

  /**
   * Opens a file to write.
   *
   * @param name relative to the folder, with {@code /} between the parts
   */
  public OutputStream open(String name) throws IOException {
    Path file = beside.resolve(name).normalize();
    if (!file.startsWith(beside)) {
      throw new IllegalArgumentException("name: " + name + ": needs a file in the folder");
    }
    Files.createDirectories(file.resolveSibling(""));
    return new BufferedOutputStream(Files.newOutputStream(file, StandardOpenOption.CREATE_NEW));
  }

  /** Moves the folder into place; every stream must be closed. */
  public void commit() throws IOException {
    if (!Files.exists(place)) {
      Files.move(beside, place);
      return;
    }
    Path old = place.resolveSibling(beside.getFileName() + ".old");
    Files.move(place, old);
    try {
      Files.move(beside, place);
    } catch (IOException failed) {
      Files.move(old, place);
      throw failed;
    }
    delete(old);
  }

  /** Removes what was not moved into place. */
  @Override
  public void close() throws IOException {
    if (Files.exists(beside)) {
      delete(beside);
    }
  }

  private static void delete(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> found = Files.walk(folder)) {
      all = found.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.delete(path);
    }
  }
}
