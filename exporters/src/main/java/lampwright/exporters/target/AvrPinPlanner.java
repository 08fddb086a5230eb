package lampwright.exporters.target;

import com.google.common.collect.ImmutableSet;
import com.google.common.collect.Sets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/** Gives every chain and output of a rig a pin of an AVR: what the project states, else ours. */
final class AvrPinPlanner {
  /** As many as a port has pins. Ours: each chain has a routine of its own in program memory. */
  static final int MAX_CHAINS = 8;

  private final Rig rig;
  private final AvrPins pins;
  private final String name;
  private final Subject chip;
  private final List<Finding> refusals = new ArrayList<>();
  private final Set<Pin> taken = new HashSet<>();
  private final OptionalInt servoTimer;

  /**
   * The planner of a rig.
   *
   * @param servoTimer the timer that servo pulses need, if there are any
   */
  AvrPinPlanner(Rig rig, AvrPins pins, String name, OptionalInt servoTimer) {
    this.servoTimer = servoTimer;
    this.rig = rig;
    this.pins = pins;
    this.name = name;
    this.chip = new Subject.Chip(name);
  }

  PinPlan plan() {
    if (rig.chains().size() > MAX_CHAINS) {
      refuse(
          Finding.of(Code.TOO_MANY_CHAINS, chip)
              .with("chains", Figure.count(rig.chains().size()))
              .with("limit", Figure.count(MAX_CHAINS))
              .at("rig.chains"));
    }
    rig.chains().forEach(chain -> chain.pin().ifPresent(taken::add));
    rig.outputs().forEach(output -> output.pin().ifPresent(taken::add));
    inputs();
    // Outputs first: they can use few pins, chains any.
    List<Optional<Pin>> outputs = outputs();
    List<Optional<Pin>> chains = chains();
    OptionalInt clock = clock(outputs);
    Optional<Pin> free = pins.forSwitch().stream().filter(pin -> !taken.contains(pin)).findFirst();
    return new PinPlan(chains, outputs, clock, free, refusals);
  }

  private void inputs() {
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      String path = "rig.inputs[" + i + "]";
      input.pin().ifPresent(pin -> exists(pin, new Subject.OneInput(input.id()), path));
      input.pin().ifPresent(taken::add);
    }
  }

  private List<Optional<Pin>> chains() {
    List<Optional<Pin>> found = new ArrayList<>();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      Subject subject = new Subject.OneChain(chain.id());
      String path = "rig.chains[" + i + "]";
      chain.pin().ifPresent(pin -> exists(pin, subject, path));
      Optional<Pin> pin =
          chain
              .pin()
              .or(() -> pins.forChains().stream().filter(p -> !taken.contains(p)).findFirst());
      if (pin.isEmpty() && i < MAX_CHAINS) {
        refuse(
            Finding.of(Code.PINS_USED_UP, subject)
                .with("name", Figure.words(name))
                .with("limit", Figure.count(pins.all().size()))
                .at(path));
      }
      found.add(pin);
      pin.ifPresent(taken::add);
    }
    return found;
  }

  private List<Optional<Pin>> outputs() {
    List<Pin> usual = pinsForOpenOutputs();
    int next = 0;
    List<Optional<Pin>> found = new ArrayList<>();
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      if (output.pin().isPresent()) {
        stated(output, output.pin().get(), "rig.outputs[" + i + "]");
        found.add(output.pin());
      } else {
        found.add(next < usual.size() ? Optional.of(usual.get(next++)) : Optional.empty());
      }
    }
    long missing = found.stream().filter(Optional::isEmpty).count();
    if (missing > 0 && rig.outputs().size() <= pins.mostOutputs()) {
      refuse(
          Finding.of(Code.PWM_PINS_USED_UP, chip)
              .with("missing", Figure.count(missing))
              .with("pins", Figure.words(AvrPins.list(pins.pwm().keySet())))
              .at("rig.outputs"));
    }
    found.forEach(pin -> pin.ifPresent(taken::add));
    return found;
  }

  private void stated(DriverOutput output, Pin pin, String path) {
    Subject subject = new Subject.OneOutput(output.id());
    if (exists(pin, subject, path) && !pins.pwm().containsKey(pin)) {
      refuse(
          Finding.of(Code.PIN_WITHOUT_PWM, subject)
              .with("pin", Figure.words(pin.name()))
              .with("name", Figure.words(name))
              .with("pins", Figure.words(AvrPins.list(pins.pwm().keySet())))
              .at(path + ".pin"));
    }
  }

  private boolean exists(Pin pin, Subject subject, String path) {
    boolean there = pins.all().contains(pin);
    if (!there) {
      refusals.add(unknown(pin, subject, path, name, AvrPins.list(pins.all())));
    }
    return there;
  }

  /**
   * The refusal of a pin that a controller lacks.
   *
   * @param known those that it has, in words
   */
  static Finding unknown(Pin pin, Subject subject, String path, String name, String known) {
    return Finding.of(Code.PIN_UNKNOWN, subject)
        .with("pin", Figure.words(pin.name()))
        .with("name", Figure.words(name))
        .with("pins", Figure.words(known))
        .at(path + ".pin")
        .make();
  }

  /**
   * Pins for the outputs that state none: the first of the usual choices, or else of all, that
   * leaves a timer for the frame clock beside the outputs with a pin of their own.
   */
  private List<Pin> pinsForOpenOutputs() {
    int open = (int) rig.outputs().stream().filter(o -> o.pin().isEmpty()).count();
    List<Pin> free = pins.pwm().keySet().stream().filter(p -> !taken.contains(p)).toList();
    List<List<Pin>> choices = new ArrayList<>();
    pins.forOutputs().stream()
        .map(choice -> choice.stream().filter(free::contains).toList())
        .filter(choice -> choice.size() >= open)
        .forEach(choice -> choices.add(choice.subList(0, open)));
    if (open <= free.size()) {
      Sets.combinations(ImmutableSet.copyOf(free), open)
          .forEach(choice -> choices.add(List.copyOf(choice)));
    }
    return choices.stream()
        .filter(this::leaveATimer)
        .findFirst()
        .orElse(choices.isEmpty() ? free : choices.get(0));
  }

  private boolean leaveATimer(List<Pin> open) {
    Stream<Pin> stated = rig.outputs().stream().flatMap(o -> o.pin().stream());
    Set<Integer> used = timers(Stream.concat(open.stream(), stated));
    return servoTimer.isPresent()
        ? !used.contains(servoTimer.getAsInt())
        : used.size() < pins.timers().size();
  }

  private Set<Integer> timers(Stream<Pin> outputs) {
    return outputs
        .filter(pins.pwm()::containsKey)
        .map(pin -> pins.pwm().get(pin).timer())
        .collect(Collectors.toSet());
  }

  private OptionalInt clock(List<Optional<Pin>> outputs) {
    Figure count = Figure.count(pins.timers().size());
    if (rig.outputs().size() > pins.mostOutputs()) {
      refuse(
          Finding.of(Code.TOO_MANY_OUTPUTS, chip)
              .with("outputs", Figure.count(rig.outputs().size()))
              .with("limit", Figure.count(pins.mostOutputs()))
              .with("timers", count)
              .at("rig.outputs"));
      return OptionalInt.empty();
    }
    Set<Integer> used = timers(outputs.stream().flatMap(Optional::stream));
    OptionalInt free =
        pins.clockTimers().stream()
            .filter(timer -> !used.contains(timer))
            .filter(timer -> servoTimer.isEmpty() || servoTimer.getAsInt() == timer)
            .mapToInt(timer -> timer)
            .findFirst();
    if (free.isEmpty()) {
      List<Pin> placed = outputs.stream().flatMap(Optional::stream).toList();
      refuse(
          Finding.of(Code.TIMERS_USED_UP, chip)
              .with("pins", Figure.words(AvrPins.list(placed)))
              .with("timers", count)
              .with("sharing", Figure.words(pins.sharing()))
              .at("rig.outputs"));
    }
    return free;
  }

  private void refuse(Finding.Draft refusal) {
    refusals.add(refusal.make());
  }
}
