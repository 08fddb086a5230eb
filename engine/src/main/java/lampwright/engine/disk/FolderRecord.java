package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableSortedMap;
import com.google.common.hash.Hashing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.check.SafeText;

/**
 * What was written into a folder: each file's name and SHA-256, a line each, as {@code sha256sum
 * -c} reads them. It tells what has been changed since. Immutable.
 */
public final class FolderRecord {
  // A file of ours is far smaller, and what is larger was changed.
  private static final int MAX_FILE_BYTES = 1 << 24;
  private static final int MAX_RECORD_BYTES = 1 << 18;

  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64})  (.+)");

  private final ImmutableSortedMap<String, String> digests;

  /**
   * A record.
   *
   * @param digests by name, with {@code /} between the parts
   */
  private FolderRecord(Map<String, String> digests) {
    this.digests = ImmutableSortedMap.copyOf(digests);
  }

  /** The record of files with these contents. */
  public static FolderRecord of(Map<String, byte[]> files) {
    SortedMap<String, String> digests = new TreeMap<>();
    files.forEach((name, bytes) -> digests.put(name, digest(bytes)));
    return new FolderRecord(digests);
  }

  /**
   * Reads a record.
   *
   * @return none if there is no such file
   * @throws IOException if it can't be read, or is no record
   */
  public static Optional<FolderRecord> read(Path file) throws IOException {
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    SortedMap<String, String> digests = new TreeMap<>();
    String text = RegularFile.text(file, MAX_RECORD_BYTES);
    for (String line : Splitter.on('\n').omitEmptyStrings().split(text)) {
      Matcher parts = LINE.matcher(line);
      try {
        if (!parts.matches()) {
          throw new IllegalArgumentException(SafeText.quoted(line));
        }
        SetPlan.checkName(parts.group(2));
        digests.put(parts.group(2), parts.group(1));
      } catch (IllegalArgumentException strange) {
        throw new IOException(
            FileTroubles.text(file, "could not read: is no record of Lampwright's"), strange);
      }
    }
    return Optional.of(new FolderRecord(digests));
  }

  /** The names in it. */
  public Iterable<String> names() {
    return digests.keySet();
  }

  /** Whether these are the bytes that were written under this name. */
  public boolean holds(String name, byte[] bytes) {
    return digest(bytes).equals(digests.get(name));
  }

  /**
   * Whether a file of the folder is as it was written.
   *
   * @throws IOException if it can't be read
   */
  public boolean unchanged(Path folder, String name) throws IOException {
    Path file = folder.resolve(name);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        || Files.size(file) > MAX_FILE_BYTES) {
      return false;
    }
    return holds(name, RegularFile.read(file, MAX_FILE_BYTES));
  }

  /** As it is written into a file. */
  public byte[] bytes() {
    StringBuilder text = new StringBuilder();
    digests.forEach((name, digest) -> text.append(digest).append("  ").append(name).append('\n'));
    return text.toString().getBytes(UTF_8);
  }

  private static String digest(byte[] bytes) {
    return Hashing.sha256().hashBytes(bytes).toString();
  }
}
