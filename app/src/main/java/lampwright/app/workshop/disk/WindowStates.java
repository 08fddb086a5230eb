package lampwright.app.workshop.disk;

import java.io.IOException;
import java.io.StringReader;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Collectors;
import lampwright.engine.disk.RegularFile;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.rig.View;

/** Keeps how the window was left, in the state folder. */
public final class WindowStates {
  private static final int MAX_BYTES = 1 << 16;

  private final Path place;

  /**
   * @param state the user's state folder
   */
  public WindowStates(Path state) {
    this.place = state.resolve("window.properties");
  }

  /**
   * How it was left; {@link WindowState#FIRST} if it was never open.
   *
   * @throws IOException if that can't be read or makes no sense
   */
  public WindowState read() throws IOException {
    if (Files.notExists(place)) {
      return WindowState.FIRST;
    }
    Properties values = new Properties();
    try {
      values.load(new StringReader(RegularFile.text(place, MAX_BYTES)));
      return new WindowState(
          frame(values.getProperty("frame", "")),
          Boolean.parseBoolean(values.getProperty("maximised", "")),
          numbers(values.getProperty("dividers", "")),
          Boolean.parseBoolean(values.getProperty("dark", "true")),
          view(values.getProperty("view", "")),
          rows(values));
    } catch (IllegalArgumentException senseless) {
      throw new IOException(place + ": " + senseless.getMessage(), senseless);
    }
  }

  /** Keeps it. */
  public void write(WindowState state) throws IOException {
    String frame =
        state
            .place()
            .map(f -> List.of(f.x(), f.y(), f.width(), f.height()))
            .map(WindowStates::text)
            .orElse("");
    WholeFile.write(
        place,
        "frame="
            + frame
            + "\nmaximised="
            + state.maximised()
            + "\ndividers="
            + text(state.dividers())
            + "\ndark="
            + state.dark()
            + "\nview="
            + state.view().key()
            + "\ntitles="
            + state.rows().titles()
            + "\nheight="
            + state.rows().height()
            + "\nfolded="
            + folded(state.rows().folded())
            + "\n");
  }

  // Names of groups may hold anything; what would make the file too long to be read is left out.
  private static String folded(List<String> groups) {
    StringBuilder text = new StringBuilder();
    for (String group : groups) {
      String coded = URLEncoder.encode(group, StandardCharsets.UTF_8);
      if (text.length() + coded.length() < MAX_BYTES / 2) {
        text.append(text.isEmpty() ? "" : " ").append(coded);
      }
    }
    return text.toString();
  }

  private static WindowState.Rows rows(Properties values) {
    String folded = values.getProperty("folded", "").trim();
    return new WindowState.Rows(
        Double.parseDouble(values.getProperty("titles", "0")),
        values.getProperty("height", ""),
        folded.isEmpty()
            ? List.of()
            : Arrays.stream(folded.split(" +"))
                .map(coded -> URLDecoder.decode(coded, StandardCharsets.UTF_8))
                .toList());
  }

  private static String text(List<Double> numbers) {
    return numbers.stream().map(Object::toString).collect(Collectors.joining(" "));
  }

  private static List<Double> numbers(String text) {
    return text.isBlank()
        ? List.of()
        : Arrays.stream(text.trim().split(" +")).map(Double::valueOf).toList();
  }

  private static Optional<WindowState.Frame> frame(String text) {
    List<Double> n = numbers(text);
    if (n.isEmpty()) {
      return Optional.empty();
    }
    if (n.size() != 4) {
      throw new IllegalArgumentException("frame: " + text + ": needs four numbers");
    }
    return Optional.of(new WindowState.Frame(n.get(0), n.get(1), n.get(2), n.get(3)));
  }

  private static View view(String key) {
    return Arrays.stream(View.values())
        .filter(view -> Objects.equals(view.key(), key))
        .findFirst()
        .orElse(View.SIDE);
  }
}
