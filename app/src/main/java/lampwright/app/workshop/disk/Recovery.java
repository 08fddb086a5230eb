package lampwright.app.workshop.disk;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.disk.Owner;
import lampwright.engine.json.ProjectReader;

/**
 * A project as it was on the bench, kept against a crash. On the disk:
 *
 * <pre>
 * lampwright recovery 1
 * file file:///home/ann/tractor.lampwright.json
 * saved 2f1d...           SHA-256 of the file that the bench began with
 * process 4711 2026-05-01T18:20:00Z
 * written 2026-05-01T18:25:13Z
 * text 9c0a...            SHA-256 of all that follows the empty line
 *
 * { the project, as it would be saved }
 * </pre>
 *
 * @param file that it belongs to; none for a project never saved
 * @param savedHash of what that file held; none if nothing was saved, or the file was gone
 * @param owner who wrote it
 * @param written when, to the second
 * @param text of the project
 */
public record Recovery(
    Optional<Path> file, Optional<String> savedHash, Owner owner, Instant written, String text) {
  private static final String FIRST_LINE = "lampwright recovery 1";
  private static final String END_OF_HEAD = "\n\n";
  private static final int MAX_HEAD = 1 << 16;

  /** The largest recovery file, in bytes. */
  static final int MAX_BYTES = ProjectReader.MAX_BYTES + MAX_HEAD;

  /** As it stands on the disk. */
  public String write() {
    StringBuilder head = new StringBuilder(FIRST_LINE);
    file.ifPresent(path -> head.append("\nfile ").append(path.toUri()));
    savedHash.ifPresent(hash -> head.append("\nsaved ").append(hash));
    return head.append("\nprocess ")
        .append(owner.pid())
        .append(' ')
        .append(owner.started())
        .append("\nwritten ")
        .append(written)
        .append("\ntext ")
        .append(hash(text))
        .append(END_OF_HEAD)
        .append(text)
        .toString();
  }

  /** Reads it; empty if it is damaged. */
  public static Optional<Recovery> read(String all) {
    int end = all.indexOf(END_OF_HEAD);
    if (!all.startsWith(FIRST_LINE + "\n") || end < 0 || end > MAX_HEAD) {
      return Optional.empty();
    }
    Map<String, String> head = new HashMap<>();
    for (String line : all.substring(0, end).split("\n", -1)) {
      int space = Math.max(0, line.indexOf(' '));
      head.put(line.substring(0, space), line.substring(space + 1));
    }
    String text = all.substring(end + END_OF_HEAD.length());
    if (!hash(text).equals(head.get("text"))) {
      return Optional.empty();
    }
    try {
      String[] process = head.getOrDefault("process", "").split(" ", 2);
      return Optional.of(
          new Recovery(
              Optional.ofNullable(head.get("file")).map(uri -> Path.of(URI.create(uri))),
              Optional.ofNullable(head.get("saved")),
              new Owner(Long.parseLong(process[0]), Instant.parse(process[1])),
              Instant.parse(head.getOrDefault("written", "")),
              text));
    } catch (IllegalArgumentException
        | DateTimeException
        | FileSystemNotFoundException
        | ArrayIndexOutOfBoundsException strange) {
      return Optional.empty();
    }
  }

  private static String hash(String text) {
    return FileHash.of(text.getBytes(StandardCharsets.UTF_8));
  }
}
