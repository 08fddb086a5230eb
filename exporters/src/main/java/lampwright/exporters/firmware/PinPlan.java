package lampwright.exporters.firmware;

import com.google.common.collect.ImmutableSet;
import com.google.common.collect.Sets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.light.Checks;
import lampwright.engine.light.Fault;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * Which pin each chain and output hangs on.
 *
 * @param chains one pin for each chain, in rig order; none if the builder's own code drives them
 * @param outputs one pin for each output, likewise
 * @param faults why the rig does not fit the controller's pins; then the lists may be short
 */
record PinPlan(List<Pin> chains, List<Pin> outputs, List<Fault> faults) {
  private static final int MAX_CHAINS = 8;

  PinPlan {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    faults = List.copyOf(faults);
  }

  /** The pins that the project states, and for all else the controller's usual ones. */
  static PinPlan of(Rig rig, Board board) {
    if (!board.driven()) {
      return new PinPlan(List.of(), List.of(), List.of());
    }
    return new Planner(rig, board).plan();
  }

  private static final class Planner {
    private final Rig rig;
    private final Board board;
    private final String name;
    private final Checks checks = Checks.of("pins");
    private final Set<Pin> taken = new HashSet<>();

    Planner(Rig rig, Board board) {
      this.rig = rig;
      this.board = board;
      this.name = board.controller().name();
    }

    PinPlan plan() {
      checks.that(
          rig.chains().size() <= MAX_CHAINS,
          "chains",
          Integer.toString(rig.chains().size()),
          "needs at most " + MAX_CHAINS + " for the driver of the " + name);
      rig.chains().forEach(chain -> chain.pin().ifPresent(taken::add));
      rig.outputs().forEach(output -> output.pin().ifPresent(taken::add));
      // Outputs first: they can use few pins, chains any.
      List<Pin> outputs = outputs();
      List<Pin> chains = chains();
      timers(outputs);
      return new PinPlan(chains, outputs, checks.faults());
    }

    private List<Pin> chains() {
      List<Pin> found = new ArrayList<>();
      for (Chain chain : rig.chains()) {
        Optional<Pin> free = board.chainPins().stream().filter(p -> !taken.contains(p)).findFirst();
        chain.pin().ifPresent(pin -> exists("chain " + chain.id(), pin));
        chain.pin().or(() -> free).ifPresentOrElse(found::add, () -> none("chain " + chain.id()));
        taken.addAll(found);
      }
      return found;
    }

    private List<Pin> outputs() {
      List<Pin> usual = pinsForOpenOutputs();
      int next = 0;
      List<Pin> found = new ArrayList<>();
      for (DriverOutput output : rig.outputs()) {
        if (output.pin().isPresent()) {
          Pin pin = output.pin().orElseThrow();
          if (exists("output " + output.id(), pin)) {
            checks.that(
                board.pwmTimers().containsKey(pin),
                "output " + output.id(),
                pin.name(),
                "needs a pin of the " + name + " with PWM: " + list(board.pwmPins()));
          }
          found.add(pin);
        } else if (next < usual.size()) {
          found.add(usual.get(next++));
        }
      }
      int most = mostOutputs();
      int missing = rig.outputs().size() - found.size();
      checks.that(
          missing == 0 || rig.outputs().size() > most,
          "outputs",
          Integer.toString(rig.outputs().size()),
          "needs "
              + missing
              + " fewer, or chains that leave the pins of the "
              + name
              + " with PWM free: "
              + list(board.pwmPins()));
      taken.addAll(found);
      return found;
    }

    /**
     * Pins for the outputs that state none: the first of the usual choices, or else of all, that
     * leaves a timer for the frame clock beside the outputs with a pin of their own.
     */
    private List<Pin> pinsForOpenOutputs() {
      int open = (int) rig.outputs().stream().filter(o -> o.pin().isEmpty()).count();
      List<Pin> free = board.pwmPins().stream().filter(p -> !taken.contains(p)).toList();
      List<List<Pin>> choices = new ArrayList<>();
      board.outputPins().stream()
          .map(pins -> pins.stream().filter(free::contains).toList())
          .filter(pins -> pins.size() >= open)
          .forEach(pins -> choices.add(pins.subList(0, open)));
      if (open <= free.size()) {
        Sets.combinations(ImmutableSet.copyOf(free), open)
            .forEach(pins -> choices.add(List.copyOf(pins)));
      }
      return choices.stream()
          .filter(this::leaveATimer)
          .findFirst()
          .orElse(choices.isEmpty() ? free : choices.get(0));
    }

    private boolean leaveATimer(List<Pin> pins) {
      Set<Integer> used = new HashSet<>();
      Stream.concat(pins.stream(), rig.outputs().stream().flatMap(o -> o.pin().stream()))
          .filter(board.pwmTimers()::containsKey)
          .forEach(pin -> used.add(board.pwmTimers().get(pin)));
      return used.size() < board.timers();
    }

    private void timers(List<Pin> outputs) {
      int most = mostOutputs();
      if (rig.outputs().size() > most) {
        checks.add(
            "outputs",
            Integer.toString(rig.outputs().size()),
            "needs at most "
                + most
                + " on the "
                + name
                + ", as one of its "
                + board.timers()
                + " timers must count the frames; drive the others as pixels of a chain");
        return;
      }
      Set<Integer> used =
          outputs.stream()
              .filter(board.pwmTimers()::containsKey)
              .map(board.pwmTimers()::get)
              .collect(Collectors.toSet());
      checks.that(
          used.size() < board.timers(),
          "outputs",
          list(outputs),
          "needs pins that leave one of the "
              + board.timers()
              + " timers of the "
              + name
              + " to count the frames, so choose pins that share a timer: "
              + sharing());
    }

    /** How many outputs there can be if one timer is to be left: all but its pins. */
    private int mostOutputs() {
      Map<Integer, Long> pins =
          board.pwmTimers().values().stream()
              .collect(Collectors.groupingBy(timer -> timer, Collectors.counting()));
      long left = pins.size() < board.timers() ? 0 : Collections.min(pins.values());
      return (int) (board.pwmTimers().size() - left);
    }

    private String sharing() {
      return board.pwmTimers().values().stream()
          .distinct()
          .sorted()
          .filter(timer -> Collections.frequency(board.pwmTimers().values(), timer) > 1)
          .map(
              timer ->
                  board.pwmPins().stream()
                      .filter(pin -> timer.equals(board.pwmTimers().get(pin)))
                      .map(Pin::name)
                      .collect(Collectors.joining(" and ")))
          .collect(Collectors.joining("; "));
    }

    private boolean exists(String what, Pin pin) {
      boolean there = board.pins().contains(pin);
      checks.that(
          there, what, pin.name(), "needs a pin of the " + name + ": " + list(board.pins()));
      return there;
    }

    private void none(String what) {
      checks.add(what, "no pin left", "needs a free pin of the " + name);
    }

    private static String list(List<Pin> pins) {
      return pins.stream().map(Pin::name).collect(Collectors.joining(", "));
    }
  }
}
