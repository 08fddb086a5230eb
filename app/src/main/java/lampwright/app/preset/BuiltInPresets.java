package lampwright.app.preset;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;
import lampwright.engine.document.Preset;
import lampwright.engine.json.PresetFile;

/** The presets that come with the program, read once from presets.json. */
public final class BuiltInPresets {
  private static final String FILE = "presets.json";

  private static final class Data {
    static final List<Preset> ALL = load();

    private static List<Preset> load() {
      try (InputStream file =
          Objects.requireNonNull(BuiltInPresets.class.getResourceAsStream(FILE))) {
        PresetFile.Result read = PresetFile.read(FILE, file.readAllBytes());
        if (!read.problems().isEmpty()) {
          throw new IllegalStateException(String.join("\n", read.problems()));
        }
        return read.presets();
      } catch (IOException unreadable) {
        throw new UncheckedIOException(unreadable);
      }
    }
  }

  private BuiltInPresets() {}

  /** All of them, in the order in which they are listed. */
  public static List<Preset> all() {
    return Data.ALL;
  }
}
