package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.Rig;

/** The values of a rig beside its wires and parts. The ranges are those of the records. */
public final class RigSettings {
  private static final long USUAL_MEGAHERTZ = 16;

  private static final Kind.Amount SHARE = Kind.Amount.of("", 0, 1, 0.05);

  private RigSettings() {}

  /** The supply. */
  public static List<Setting<Rig, ?>> supply() {
    return List.of(
        Setting.ofDouble(
            "supplyVolts",
            Kind.Amount.of("volts", 1, 60, 0.1),
            Rig::supplyVolts,
            (rig, v) -> RigDraft.changed(rig, d -> d.supplyVolts = v)),
        Setting.ofDouble(
            "supplyLimitMilliamps",
            Kind.Amount.of("milliamps", 1, 1_000_000, 50),
            Rig::supplyLimitMilliamps,
            (rig, v) -> RigDraft.changed(rig, d -> d.supplyLimitMilliamps = v)),
        Setting.ofMaybeDouble(
            "dataVolts",
            Kind.Amount.of("volts", 1, 12, 0.1),
            Rig.DEFAULT_DATA_VOLTS,
            Rig::dataVolts,
            (rig, v) -> RigDraft.changed(rig, d -> d.dataVolts = v)),
        new Setting<>(
            "currentCap",
            new Kind.Choice<>("currentCap", List.of(CurrentCap.values()), CurrentCap::key),
            Rig::currentCap,
            (rig, v) -> RigDraft.changed(rig, d -> d.currentCap = v)),
        Setting.ofDouble(
            "brightnessCap",
            SHARE,
            Rig::brightnessCap,
            (rig, v) -> RigDraft.changed(rig, d -> d.brightnessCap = v)));
  }

  /** How colours and levels become light. */
  public static List<Setting<Rig, ?>> light() {
    return List.of(
        new Setting<>(
            "curve",
            new Kind.Choice<>("curve", List.of("power", "srgb", "cie-lightness", "linear"), k -> k),
            rig -> curve(rig.curve()),
            (rig, v) -> RigDraft.changed(rig, d -> d.curve = curve(v, rig.curve()))),
        new Setting<>(
            "gamma",
            new Kind.Maybe<>(Kind.Amount.of("", 1, 4, 0.05), new BigDecimal("2.2")),
            rig ->
                rig.curve() instanceof Curve.Power p
                    ? Optional.of(BigDecimal.valueOf(p.gamma()))
                    : Optional.empty(),
            (rig, v) ->
                v.isEmpty() && !(rig.curve() instanceof Curve.Power)
                    ? rig
                    : RigDraft.changed(
                        rig,
                        d ->
                            d.curve =
                                v.<Curve>map(g -> new Curve.Power(g.doubleValue()))
                                    .orElseGet(Curve.Linear::new))),
        new Setting<>(
            "colourMatching",
            new Kind.Choice<>(
                "colourMatching", List.of(ColourMatching.values()), ColourMatching::key),
            Rig::colourMatching,
            (rig, v) -> RigDraft.changed(rig, d -> d.colourMatching = v)),
        new Setting<>(
            "whiteFromRgb",
            new Kind.Flag(),
            Rig::whiteFromRgb,
            (rig, v) -> RigDraft.changed(rig, d -> d.whiteFromRgb = v)));
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
                    : RigDraft.changed(rig, d -> d.controller = v)),
        new Setting<>(
            "clockMegahertz",
            new Kind.Maybe<>(
                new Kind.Whole("megahertz", Controller.MIN_MEGAHERTZ, Controller.MAX_MEGAHERTZ),
                USUAL_MEGAHERTZ),
            rig -> clock(rig).map(Integer::longValue),
            RigSettings::withClock));
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
    return RigDraft.changed(rig, d -> d.controller = rig.controller().map(c -> clocked));
  }

  private static String curve(Curve curve) {
    if (curve instanceof Curve.Power) {
      return "power";
    } else if (curve instanceof Curve.Srgb) {
      return "srgb";
    }
    return curve instanceof Curve.CieLightness ? "cie-lightness" : "linear";
  }

  private static Curve curve(String kind, Curve before) {
    return switch (kind) {
      case "srgb" -> new Curve.Srgb();
      case "cie-lightness" -> new Curve.CieLightness();
      case "linear" -> new Curve.Linear();
      default -> before instanceof Curve.Power ? before : Curve.DEFAULT;
    };
  }
}
