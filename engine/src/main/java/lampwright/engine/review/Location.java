package lampwright.engine.review;

import java.util.Optional;
import lampwright.engine.json.Position;

/**
 * Where in the project file a finding belongs.
 *
 * @param path of the field: {@code scenes[0].tracks[2].cues[1].lengthMs}
 * @param position in the file; none if the project was read from none
 */
public record Location(String path, Optional<Position> position) {
  /** As people read it: {@code rig.supplyVolts at line 5, column 20}. */
  public String words() {
    return path + position.map(at -> " at " + at.words()).orElse("");
  }
}
