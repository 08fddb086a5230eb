package lampwright.app.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lampwright.engine.disk.FileSet;
import lampwright.engine.disk.FolderRecord;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;

/**
 * A firmware folder that is written again and again. A record in it tells what was written, so that
 * what the builder has changed since stays: then our new version is laid beside it. Files that are
 * not in the record are the builder's own, and are not touched.
 */
final class FirmwareFolder {
  /** The record of what was written, in the folder. */
  static final String RECORD = "lampwright_files.txt";

  /** What a name ends in that is beside a file which the builder has changed. */
  static final String BESIDE = ".new";

  private final String name;
  private final Path place;
  private final FolderRecord before;
  private final Map<String, byte[]> recorded = new LinkedHashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  private FirmwareFolder(String name, Path place, FolderRecord before) {
    this.name = name;
    this.place = place;
    this.before = before;
  }

  /**
   * The folder as it is.
   *
   * @param name of the folder in its parent
   * @throws IOException if another folder or file is there, or its record can't be read
   */
  static FirmwareFolder in(Path parent, String name) throws IOException {
    Path place = parent.resolve(name);
    if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)
        && !Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException(place + ": could not write: not a folder; move it out of the way");
    }
    FolderRecord before =
        FolderRecord.read(place.resolve(RECORD)).orElse(FolderRecord.of(Map.of()));
    if (!before.names().iterator().hasNext() && !empty(place)) {
      throw new IOException(
          place
              + ": could not write: it has no record of what was exported there ("
              + RECORD
              + "), so that nothing tells what in it is yours; move it out of the way");
    }
    return new FirmwareFolder(name, place, before);
  }

  private static boolean empty(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return true;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }

  /**
   * Adds to a set what becomes of the folder.
   *
   * @param files by name, what a folder holds that nobody has changed
   * @param set of the parent
   * @return what the builder has to know
   */
  List<Finding> write(Map<String, byte[]> files, FileSet set) throws IOException {
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      one(file.getKey(), file.getValue(), set);
    }
    for (String old : before.names()) {
      if (!recorded.containsKey(old)) {
        gone(old, set);
      }
    }
    put(RECORD, FolderRecord.of(recorded).bytes(), set);
    return List.copyOf(findings);
  }

  private void one(String file, byte[] bytes, FileSet set) throws IOException {
    recorded.put(file, bytes);
    if (!changed(file, bytes)) {
      put(file, bytes, set);
      return;
    }
    String beside = file + BESIDE;
    if (before.holds(file, bytes)) {
      if (before.unchanged(place, beside)) {
        recorded.put(beside, bytes);
      }
      findings.add(kept(Code.EDITED_FILE_KEPT, file).make());
      return;
    }
    if (changed(beside, bytes)) {
      throw new IOException(
          place.resolve(beside)
              + ": could not write: it has been changed since it was exported; move it out of the"
              + " way");
    }
    recorded.put(beside, bytes);
    put(beside, bytes, set);
    findings.add(
        kept(Code.EDITED_FILE_DIFFERS, file).with("beside", Figure.words(shown(beside))).make());
  }

  // Whether the builder's work would be lost if these bytes took the place of what is there.
  private boolean changed(String file, byte[] bytes) throws IOException {
    return Files.exists(place.resolve(file), LinkOption.NOFOLLOW_LINKS)
        && !before.unchanged(place, file)
        && !FolderRecord.of(Map.of(file, bytes)).unchanged(place, file);
  }

  private void gone(String file, FileSet set) throws IOException {
    if (before.unchanged(place, file)) {
      set.drop(name + "/" + file);
    } else if (Files.exists(place.resolve(file), LinkOption.NOFOLLOW_LINKS)) {
      findings.add(kept(Code.EDITED_FILE_KEPT, file).make());
    }
  }

  private Finding.Draft kept(Code code, String file) {
    return Finding.of(code, new Subject.OneExport(name)).with("file", Figure.words(shown(file)));
  }

  private String shown(String file) {
    return name + "/" + file;
  }

  private void put(String file, byte[] bytes, FileSet set) throws IOException {
    try (OutputStream out = set.open(name + "/" + file)) {
      out.write(bytes);
    }
  }
}
