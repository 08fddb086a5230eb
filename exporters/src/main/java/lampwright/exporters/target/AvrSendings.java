package lampwright.exporters.target;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * The sending routines of a rig: one for each kind of bits, and where these write the whole port,
 * one for each port as well.
 *
 * @param ofChains the routine of each chain; none for one that can't be sent
 * @param numbers every routine once, by number
 */
record AvrSendings(List<Optional<Sending>> ofChains, ImmutableMap<Sending, Integer> numbers) {
  /**
   * A routine.
   *
   * @param wave its bits
   * @param port letter of the port that it writes; empty where it flips a pin of any
   */
  record Sending(AvrWave wave, String port) {}

  AvrSendings {
    ofChains = List.copyOf(ofChains);
  }

  static AvrSendings of(AvrTarget target, Rig rig) {
    List<Optional<Pin>> pins = target.pins(rig).chains();
    List<Optional<Sending>> ofChains = new ArrayList<>();
    Map<Sending, Integer> numbers = new LinkedHashMap<>();
    for (int c = 0; c < rig.chains().size(); c++) {
      Chain chain = rig.chains().get(c);
      String port = pins.get(c).flatMap(Pin::port).orElse("");
      Optional<Sending> sending =
          target
              .wave(chain)
              .map(wave -> new Sending(wave, wave.way() == AvrWave.Way.WRITES_PORT ? port : ""));
      ofChains.add(sending);
      sending.ifPresent(one -> numbers.putIfAbsent(one, numbers.size()));
    }
    return new AvrSendings(ofChains, ImmutableMap.copyOf(numbers));
  }

  /** Program memory of all routines. */
  int bytes() {
    return numbers.keySet().stream().mapToInt(s -> 2 * AvrRoutine.of(s.wave).words()).sum();
  }
}
