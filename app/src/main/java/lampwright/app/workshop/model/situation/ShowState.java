package lampwright.app.workshop.model.situation;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.situation.Change;

/**
 * The situations in a frame.
 *
 * @param frame from 0
 * @param seconds the same in time
 * @param rungs by the ids of situations
 * @param owners the id of the situation that has a lamp, by the lamp's id; a dark lamp has none
 */
public record ShowState(
    int frame, double seconds, Map<String, RungState> rungs, Map<String, String> owners) {
  /**
   * One situation.
   *
   * @param active whether it is active
   * @param seconds since it began or ended, if it has
   * @param last why it began or ended last
   * @param lamps ids of those that it has
   * @param wanted how many lamps its scene has tracks for
   */
  public record RungState(
      boolean active, double seconds, Optional<Change> last, List<String> lamps, int wanted) {
    public RungState {
      lamps = List.copyOf(lamps);
    }
  }

  public ShowState {
    rungs = Map.copyOf(rungs);
    owners = Map.copyOf(owners);
  }
}
