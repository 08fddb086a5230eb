package lampwright.app.workshop.edit;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Curves;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Rig;

/** The values of a rig beside its wires and parts. */
public final class RigSettings {
  private static final long USUAL_MEGAHERTZ = 16;

  private RigSettings() {}

  /** The supply, and all that has no other place. */
  public static List<Setting<Rig, ?>> supply() {
    return ShapeSettings.of(Rig.SHAPE)
        .without(Rig.CURVE, Rig.COLOUR_MATCHING, Rig.WHITE_FROM_RGB)
        .without(Rig.FEED, Rig.BATTERY, Rig.CONTROLLER)
        .without(Rig.CHAINS, Rig.OUTPUTS, Rig.LAMPS, Rig.INPUTS)
        .list();
  }

  /** How colours and levels become light. */
  public static List<Setting<Rig, ?>> light() {
    return List.of(
        new Setting<>(
            "curve",
            new Kind.Choice<>("curve", Curves.ANY.words(), k -> k),
            rig -> curve(rig.curve()),
            (rig, v) -> Rig.CURVE.with(rig, curve(v, rig.curve()))),
        FieldForm.of(Curve.Power.GAMMA.type())
            .beginningWith(Curve.Power.GAMMA.usual().orElseThrow())
            .<Optional<Double>>optional(gamma -> gamma, gamma -> gamma)
            .setting(
                "gamma",
                rig ->
                    rig.curve() instanceof Curve.Power power
                        ? Optional.of(power.gamma())
                        : Optional.empty(),
                RigSettings::withGamma),
        FieldSettings.of(Rig.COLOUR_MATCHING),
        FieldSettings.of(Rig.WHITE_FROM_RGB));
  }

  /** The controller, and its clock. */
  public static List<Setting<Rig, ?>> controller() {
    return List.of(
        new Setting<>(
            "controller",
            new Kind.Maybe<>(
                new Kind.Choice<>("controller", Controller.all(), Controller::id),
                Controller.all().get(0)),
            rig -> rig.controller().map(RigSettings::anyClock),
            (rig, v) ->
                v.equals(rig.controller().map(RigSettings::anyClock))
                    ? rig
                    : Rig.CONTROLLER.with(rig, v)),
        new Setting<>(
            "clockMegahertz",
            new Kind.Maybe<>(FormOfType.count(Controller.CLOCK), USUAL_MEGAHERTZ),
            rig -> clock(rig).map(Integer::longValue),
            RigSettings::withClock));
  }

  private static Rig withGamma(Rig rig, Optional<Double> gamma) {
    return gamma.isEmpty() && !(rig.curve() instanceof Curve.Power)
        ? rig
        : Rig.CURVE.with(rig, gamma.<Curve>map(Curve.Power::new).orElseGet(Curve.Linear::new));
  }

  private static Controller anyClock(Controller controller) {
    return controller.withClock(OptionalInt.empty());
  }

  private static Optional<Integer> clock(Rig rig) {
    return rig.controller().flatMap(c -> c.clockMegahertz().stream().boxed().findFirst());
  }

  // Without a controller there is no clock, but what a clock may be is still checked.
  private static Rig withClock(Rig rig, Optional<Long> megahertz) {
    OptionalInt clock =
        megahertz.map(m -> OptionalInt.of(Math.toIntExact(m))).orElse(OptionalInt.empty());
    Controller clocked = rig.controller().orElse(Controller.all().get(0)).withClock(clock);
    return Rig.CONTROLLER.with(rig, rig.controller().map(c -> clocked));
  }

  private static String curve(Curve curve) {
    return Curves.ANY.word(Curves.ANY.shapeOf(curve));
  }

  private static Curve curve(String kind, Curve before) {
    return before instanceof Curve.Power && curve(before).equals(kind)
        ? before
        : Curves.ANY.shape(kind).orElseThrow().draft().make();
  }
}
