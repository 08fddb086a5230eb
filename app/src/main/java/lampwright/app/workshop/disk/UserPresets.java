package lampwright.app.workshop.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import lampwright.engine.disk.RegularFile;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Preset;
import lampwright.engine.document.ProjectFaults;
import lampwright.engine.json.PresetFile;

/** The presets that a user keeps for every project, in the state folder. */
public final class UserPresets {
  private static final int MOST_LINES = 3;

  private final Path place;

  /**
   * @param state the user's state folder
   */
  public UserPresets(Path state) {
    this.place = state.resolve("presets.json");
  }

  /** The file that they are in. */
  public Path place() {
    return place;
  }

  /**
   * All of them; none if none was ever kept.
   *
   * @throws IOException if the file can't be read or is damaged: its message names the file and
   *     says why
   */
  public List<Preset> read() throws IOException {
    if (Files.notExists(place)) {
      return List.of();
    }
    PresetFile.Result read =
        PresetFile.read(place.toString(), RegularFile.read(place, PresetFile.MAX_BYTES + 1));
    if (!read.problems().isEmpty()) {
      throw new IOException(
          String.join(
              "\n", read.problems().subList(0, Math.min(MOST_LINES, read.problems().size()))));
    }
    return read.presets();
  }

  /**
   * Changes them: reads the file, as another window may have written it, and writes it whole. A
   * damaged file is left as it is.
   *
   * @return what is kept then
   * @throws IOException if the file can't be read or written, is damaged, or what the change gives
   *     is not accepted
   */
  public List<Preset> change(UnaryOperator<List<Preset>> change) throws IOException {
    List<Preset> before = read();
    List<Preset> changed = change.apply(before);
    if (changed.size() > Preset.MAX) {
      throw new IOException(place + ": must be at most " + Preset.MAX + " presets");
    }
    if (!ProjectFaults.ofPresets(changed).isEmpty()) {
      throw new IOException(place + ": names must be unique");
    }
    if (!changed.equals(before)) {
      WholeFile.write(place, PresetFile.write(changed));
    }
    return changed;
  }
}
