package lampwright.engine.rig;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.NumberTable;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;

/**
 * A microcontroller that plays the exported data, as it is fitted. What its pins, timers and memory
 * are the exporters know.
 *
 * @param id the word for it in project files: its part number in lower case
 * @param name its part number
 * @param clockMegahertz the clock that it runs at, if stated; 1 to 1,000 MHz
 * @param pinVolts high level of its pins on the usual boards, V
 * @param maxSupplyVolts the greatest supply at which its pins have the level of that supply, V;
 *     none if they always have the same
 * @param pinSource where the numbers of the level come from
 */
public record Controller(
    String id,
    String name,
    OptionalInt clockMegahertz,
    double pinVolts,
    OptionalDouble maxSupplyVolts,
    String pinSource) {

  private static final NumberTable TABLE =
      NumberTable.read(
          Objects.requireNonNull(Controller.class.getResourceAsStream("controllers.csv")));
  private static final List<Controller> KNOWN =
      TABLE.subjects().stream().map(id -> of(id, TABLE)).toList();

  /** What a stated clock may be. */
  public static final WholeType<Integer> CLOCK = WholeType.ofInt(Unit.MEGAHERTZ, 1, 1000);

  private static final Field<Optional<Controller>, Optional<Controller>> NAMED =
      Field.optional(
          "controller",
          OptionalType.of(new ChoiceType<>("controller", KNOWN, Controller::id)),
          fitted -> fitted);

  private static final Field<Optional<Controller>, OptionalInt> CLOCK_MEGAHERTZ =
      Field.optional(
          "clockMegahertz",
          OptionalType.ofInt(CLOCK),
          fitted -> fitted.map(Controller::clockMegahertz).orElse(OptionalInt.empty()));

  /** How a rig has it, if it does: its name and its clock beside it. */
  static final Shape<Optional<Controller>> SHAPE =
      Shape.custom("controller", Optional.class, Controller::make, NAMED, CLOCK_MEGAHERTZ);

  public Controller {
    Checks checks = Checks.of("controller");
    clockMegahertz.ifPresent(clock -> CLOCK.check("clockMegahertz", clock, checks));
    checks.done();
  }

  /** All that are known, in the order in which they are listed to people. */
  public static List<Controller> all() {
    return KNOWN;
  }

  /** The numbers of a controller with their sources, but for those that the exporters know. */
  public static List<SourcedNumber> numbers(String id) {
    return TABLE.of(id);
  }

  /** The controller with this id, of which no clock is stated. */
  public static Optional<Controller> find(String id) {
    return KNOWN.stream().filter(c -> c.id().equals(id)).findFirst();
  }

  /**
   * High level of its pins in a rig, V: that of the supply where it can be fed from it, else that
   * of the usual boards, which have a regulator.
   */
  public double pinVolts(double supplyVolts) {
    return supplyVolts <= maxSupplyVolts.orElse(0) ? supplyVolts : pinVolts;
  }

  /** The same at a clock, or at one that is not stated. */
  public Controller withClock(OptionalInt megahertz) {
    return new Controller(id, name, megahertz, pinVolts, maxSupplyVolts, pinSource);
  }

  private static Optional<Controller> make(Draft<Optional<Controller>> draft) {
    Optional<Controller> named = draft.get(NAMED);
    OptionalInt clock = draft.get(CLOCK_MEGAHERTZ);
    Checks.of("rig")
        .that(
            named.isPresent() || clock.isEmpty(),
            "clockMegahertz",
            Integer.toString(clock.orElse(0)),
            "must be used with a controller")
        .done();
    return named.map(controller -> controller.withClock(clock));
  }

  private static Controller of(String id, NumberTable table) {
    Optional<SourcedNumber> maxSupply =
        table.of(id).stream().filter(n -> n.item().equals("maxSupplyVolts")).findFirst();
    SourcedNumber pin = table.get(id, "pinVolts");
    return new Controller(
        id,
        table.get(id, "name").value(),
        OptionalInt.empty(),
        pin.number(),
        maxSupply.map(n -> OptionalDouble.of(n.number())).orElse(OptionalDouble.empty()),
        maxSupply.orElse(pin).citation());
  }
}
