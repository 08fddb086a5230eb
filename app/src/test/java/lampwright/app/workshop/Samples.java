package lampwright.app.workshop;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;

/** Projects to test with. */
public final class Samples {
  private Samples() {}

  /** One of the project files that come with the program. */
  public static Project named(String name) {
    Path file = Path.of("..", "samples", name + ".lampwright.json");
    try {
      return ProjectReader.read(file).project().orElseThrow();
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  /** A text as a project file. */
  public static Project of(String json) {
    return ProjectReader.read("test", json.getBytes(UTF_8)).project().orElseThrow();
  }

  /** A rig that does much wrong: over its supply, flashing too fast, a cue past the end. */
  public static Project troubled() {
    return of(
        """
        {"lampwright": 1, "name": "Troubled",
         "rig": {"supplyLimitMilliamps": 100, "controller": "attiny85",
                 "chains": [{"id": "roof", "pixelType": "ws2812b", "pixels": 8}],
                 "lamps": [{"id": "beacon", "function": "special-warning",
                            "pixels": [{"chain": "roof", "from": 0, "count": 8}]}]},
         "scenes": [
           {"id": "calm", "lengthMs": 1000, "tracks": []},
           {"id": "wild", "lengthMs": 4010, "tracks": [{"lamps": ["beacon"], "cues": [
             {"startMs": 500, "lengthMs": 9000, "pattern": {"kind": "flash", "onMs": 60,
              "offMs": 60, "colour": {"signal": "blue"}}}]}]}]}
        """);
  }
}
