package lampwright.exporters.target;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * The controller's serial line that the bench link uses.
 *
 * @param number of the line, as its registers have it
 * @param receive the pin that receives
 * @param transmit the pin that sends
 * @param isFree whether the rig has nothing else on these pins
 */
public record LivePort(int number, Pin receive, Pin transmit, boolean isFree) {
  /**
   * The line for a rig: the first whose pins are free, or else the first of all; none if the
   * controller has none.
   */
  static Optional<LivePort> of(TargetTable table, Rig rig, PinPlan plan) {
    if (table.find("livePorts").isEmpty()) {
      return Optional.empty();
    }
    List<Pin> taken =
        Stream.of(plan.chains(), plan.outputs(), rig.inputs().stream().map(Input::pin).toList())
            .flatMap(Collection::stream)
            .flatMap(Optional::stream)
            .toList();
    List<LivePort> ports =
        Stream.of(table.text("livePorts").split("[|]", -1)).map(port -> of(port, taken)).toList();
    return ports.stream().filter(LivePort::isFree).findFirst().or(() -> ports.stream().findFirst());
  }

  // The number, then the pins that receive and send.
  private static LivePort of(String words, List<Pin> taken) {
    String[] parts = words.split(" ", -1);
    Pin receive = new Pin(parts[1]);
    Pin transmit = new Pin(parts[2]);
    boolean free = !taken.contains(receive) && !taken.contains(transmit);
    return new LivePort(Integer.parseInt(parts[0]), receive, transmit, free);
  }
}
