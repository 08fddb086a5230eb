package lampwright.app.workshop.model.start;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import lampwright.app.picture.LitFrame;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.json.ProjectReader;

/**
 * A file that was opened or saved before.
 *
 * @param file absolute
 * @param changed when it was last changed; none if it can't be looked at
 * @param light its picture; none if it can't be read, or holds too much for a picture
 */
public record RecentFile(Path file, Optional<Instant> changed, Optional<LitFrame> light) {
  /** A picture is no reason to read more than this. */
  private static final long MAX_BYTES = 4L << 20;

  /** A file that was not looked at yet. */
  static RecentFile unread(Path file) {
    return new RecentFile(file, Optional.empty(), Optional.empty());
  }

  /** Looks at a file. Waits for the disk. */
  static RecentFile read(Path file) {
    try {
      Instant changed = Files.getLastModifiedTime(file).toInstant();
      Optional<LitFrame> light = Optional.empty();
      if (Files.size(file) <= MAX_BYTES) {
        light =
            ProjectReader.read(file.toString(), ProjectFiles.contents(file))
                .project()
                .flatMap(LitFrame::of);
      }
      return new RecentFile(file, Optional.of(changed), light);
    } catch (IOException gone) {
      return unread(file);
    }
  }
}
