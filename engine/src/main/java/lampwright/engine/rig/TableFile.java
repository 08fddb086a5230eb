package lampwright.engine.rig;

import com.google.common.base.Splitter;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** A table of the trade's numbers that comes with the program: plain cells parted by commas. */
final class TableFile {
  private TableFile() {}

  /** The rows of a table beside this class, without comments and heading. */
  static List<List<String>> rows(String name) {
    try (InputStream in = Objects.requireNonNull(TableFile.class.getResourceAsStream(name), name);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(line -> Splitter.on(',').splitToList(line))
          .toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
