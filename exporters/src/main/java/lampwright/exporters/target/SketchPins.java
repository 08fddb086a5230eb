package lampwright.exporters.target;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * Pins as sketches for a hobby IDE write them: a number or a constant of the core, with a comment
 * where the builder has to set it. What the project leaves open is on pins that it does not name.
 *
 * @param chains one for each, in rig order
 * @param outputs one for each, in rig order
 * @param inputs one for each, in rig order
 * @param switchPin for an example's switch
 */
public record SketchPins(
    List<String> chains, List<String> outputs, List<String> inputs, String switchPin) {
  /** Usual serial ports are on pins 0 and 1. */
  private static final int FIRST = 2;

  private static final int LAST = 99;

  public SketchPins {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    inputs = List.copyOf(inputs);
  }

  /**
   * The pins of a rig.
   *
   * @param word what a sketch writes for a pin; none if that depends on the board
   * @param usual pins for what the project leaves open, the best first; none if nothing is known
   */
  static SketchPins of(Rig rig, Function<Pin, Optional<String>> word, List<Pin> usual) {
    List<Optional<Pin>> stated =
        Stream.of(
                rig.chains().stream().map(Chain::pin),
                rig.outputs().stream().map(DriverOutput::pin),
                rig.inputs().stream().map(Input::pin))
            .flatMap(pins -> pins)
            .toList();
    List<Pin> open =
        usual.isEmpty()
            ? IntStream.rangeClosed(FIRST, LAST).mapToObj(n -> new Pin("" + n)).toList()
            : usual;
    Iterator<String> free =
        open.stream()
            .filter(pin -> !stated.contains(Optional.of(pin)))
            .flatMap(pin -> word.apply(pin).stream())
            .iterator();
    List<String> words = new ArrayList<>();
    for (Optional<Pin> pin : stated) {
      Optional<String> known = pin.flatMap(word);
      words.add(known.orElseGet(() -> next(free, pin)));
    }
    int chains = rig.chains().size();
    int outputs = chains + rig.outputs().size();
    return new SketchPins(
        words.subList(0, chains),
        words.subList(chains, outputs),
        words.subList(outputs, words.size()),
        next(free, Optional.empty()));
  }

  private static String next(Iterator<String> free, Optional<Pin> stated) {
    String set =
        stated
            .map(pin -> " /* " + pin.name() + ": set the number that your board gives it */")
            .orElse("");
    return free.hasNext() ? free.next() + set : LAST + " /* set yours */";
  }
}
