package lampwright.exporters.target;

import com.google.common.collect.Ordering;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * Gives every chain and output of a rig a pin of an RP2040: what the project states, else the first
 * that is free. Any pin can carry a chain; two pins whose numbers are 16 apart have one PWM
 * channel, so only one of them can be an output.
 */
final class Rp2040PinPlanner {
  private static final int SAME_CHANNEL = 16;

  private final Rig rig;
  private final List<Pin> pins;
  private final String name;
  private final Subject chip;
  private final List<Finding> refusals = new ArrayList<>();
  private final Set<Pin> taken = new HashSet<>();
  private final Map<Integer, Pin> channels = new HashMap<>();

  Rp2040PinPlanner(Rig rig, List<Pin> pins, String name) {
    this.rig = rig;
    this.pins = pins;
    this.name = name;
    this.chip = new Subject.Chip(name);
  }

  PinPlan plan() {
    if (rig.chains().size() > Rp2040Board.MAX_CHAINS) {
      refuse(
          Finding.of(Code.TOO_MANY_CHAINS, chip)
              .with("chains", Figure.count(rig.chains().size()))
              .with("limit", Figure.count(Rp2040Board.MAX_CHAINS))
              .at("rig.chains"));
    }
    if (rig.outputs().size() > Rp2040Board.MAX_OUTPUTS) {
      refuse(
          Finding.of(Code.TOO_MANY_PWM_OUTPUTS, chip)
              .with("outputs", Figure.count(rig.outputs().size()))
              .with("limit", Figure.count(Rp2040Board.MAX_OUTPUTS))
              .at("rig.outputs"));
    }
    rig.chains().forEach(chain -> chain.pin().ifPresent(taken::add));
    rig.outputs().forEach(output -> output.pin().ifPresent(taken::add));
    rig.inputs().forEach(input -> input.pin().ifPresent(taken::add));
    stated();
    List<Optional<Pin>> outputs = outputs();
    List<Optional<Pin>> chains = chains();
    Optional<Pin> free = pins.stream().filter(pin -> !taken.contains(pin)).findFirst();
    return new PinPlan(chains, outputs, OptionalInt.empty(), free, refusals);
  }

  private void stated() {
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      String path = "rig.chains[" + i + "]";
      chain.pin().ifPresent(pin -> exists(pin, new Subject.OneChain(chain.id()), path));
    }
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      Subject subject = new Subject.OneOutput(output.id());
      String path = "rig.outputs[" + i + "]";
      output
          .pin()
          .filter(pin -> exists(pin, subject, path))
          .ifPresent(pin -> channel(pin, subject, path));
    }
  }

  private void channel(Pin pin, Subject subject, String path) {
    Pin other = channels.putIfAbsent(channelOf(pin), pin);
    if (other != null && !other.equals(pin)) {
      refuse(
          Finding.of(Code.PWM_CHANNEL_SHARED, subject)
              .with("pin", Figure.words(pin.name()))
              .with("other", Figure.words(other.name()))
              .with("name", Figure.words(name))
              .at(path + ".pin"));
    }
  }

  private static int channelOf(Pin pin) {
    return pin.number() % SAME_CHANNEL;
  }

  private List<Optional<Pin>> outputs() {
    List<Optional<Pin>> found = new ArrayList<>();
    for (DriverOutput output : rig.outputs()) {
      Optional<Pin> pin =
          output
              .pin()
              .or(
                  () ->
                      pins.stream()
                          .filter(p -> !taken.contains(p) && !channels.containsKey(channelOf(p)))
                          .findFirst());
      pin.ifPresent(
          placed -> {
            taken.add(placed);
            if (pins.contains(placed)) {
              channels.putIfAbsent(channelOf(placed), placed);
            }
          });
      found.add(pin);
    }
    long missing = found.stream().filter(Optional::isEmpty).count();
    if (missing > 0 && rig.outputs().size() <= Rp2040Board.MAX_OUTPUTS) {
      refuse(
          Finding.of(Code.PWM_PINS_USED_UP, chip)
              .with("missing", Figure.count(missing))
              .with(
                  "pins",
                  Figure.words(AvrPins.list(channels.values().stream().sorted(BY_NAME).toList())))
              .at("rig.outputs"));
    }
    return found;
  }

  private static final Ordering<Pin> BY_NAME = Ordering.natural().onResultOf(Pin::name);

  private List<Optional<Pin>> chains() {
    List<Optional<Pin>> found = new ArrayList<>();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      Optional<Pin> pin =
          chain.pin().or(() -> pins.stream().filter(p -> !taken.contains(p)).findFirst());
      if (pin.isEmpty() && i < Rp2040Board.MAX_CHAINS) {
        refuse(
            Finding.of(Code.PINS_USED_UP, new Subject.OneChain(chain.id()))
                .with("name", Figure.words(name))
                .with("limit", Figure.count(pins.size()))
                .at("rig.chains[" + i + "]"));
      }
      pin.ifPresent(taken::add);
      found.add(pin);
    }
    return found;
  }

  private boolean exists(Pin pin, Subject subject, String path) {
    if (pins.contains(pin)) {
      return true;
    }
    refusals.add(AvrPinPlanner.unknown(pin, subject, path, name, AvrPins.list(pins)));
    return false;
  }

  private void refuse(Finding.Draft refusal) {
    refusals.add(refusal.make());
  }
}
