package lampwright.exporters.target;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Pin;

/**
 * What each pin and timer of a controller is for.
 *
 * @param chains one pin for each chain, in rig order; none where the builder's code drives it and
 *     the project names none
 * @param outputs likewise for each output
 * @param clockTimer the timer that counts the frames; none if that is the builder's affair
 * @param switchPin a pin that is left for the switch of an example
 * @param refusals why the rig does not fit the pins; then the lists may be short
 */
public record PinPlan(
    List<Optional<Pin>> chains,
    List<Optional<Pin>> outputs,
    OptionalInt clockTimer,
    Optional<Pin> switchPin,
    List<Finding> refusals) {
  public PinPlan {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    refusals = List.copyOf(refusals);
  }

  /** The same with other names for its pins. */
  PinPlan named(UnaryOperator<Pin> name) {
    return new PinPlan(
        chains.stream().map(pin -> pin.map(name)).toList(),
        outputs.stream().map(pin -> pin.map(name)).toList(),
        clockTimer,
        switchPin.map(name),
        refusals);
  }
}
