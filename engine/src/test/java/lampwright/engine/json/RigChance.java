package lampwright.engine.json;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.InputLevel;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;
import lampwright.engine.rig.View;

/** Random valid rigs: up to three chains of up to eight pixels, and up to three outputs. */
final class RigChance {
  private final Chance chance;
  private final boolean matched;
  private int pins;

  RigChance(Chance chance, boolean matched) {
    this.chance = chance;
    this.matched = matched;
  }

  List<PixelType> pixelTypes() {
    return chance.distinct(2, this::pixelType, PixelType::id);
  }

  Rig rig(List<PixelType> own) {
    List<PixelType> types = new ArrayList<>(BuiltInPixelTypes.all());
    types.addAll(own);
    List<Chain> chains = chance.distinct(3, () -> chain(chance.of(types)), Chain::id);
    List<DriverOutput> outputs = chance.distinct(3, this::output, DriverOutput::id);
    if (chains.isEmpty() && outputs.isEmpty()) {
      outputs = List.of(output());
    }
    return new Rig(
        chance.number(1, 60),
        chance.number(1, 20_000),
        chance.maybeNumber(1, 12),
        curve(),
        matched ? chance.of(ColourMatching.values()) : ColourMatching.DIRECT,
        chance.flag(),
        chance.number(0, 1),
        matched ? chance.of(CurrentCap.values()) : CurrentCap.OFF,
        chance.flag() ? Optional.of(feed()) : Optional.empty(),
        chance.flag() ? Optional.of(battery()) : Optional.empty(),
        chance.flag()
            ? Optional.of(chance.of(Controller.all().toArray(Controller[]::new)))
            : Optional.empty(),
        chains,
        outputs,
        lamps(chains, outputs));
  }

  private Curve curve() {
    return switch (chance.whole(0, 4)) {
      case 0 -> new Curve.Srgb();
      case 1 -> new Curve.CieLightness();
      case 2 -> new Curve.Linear();
      default -> new Curve.Power(chance.number(1, 4));
    };
  }

  private PixelType pixelType() {
    EmitterOrder order = order(chance.whole(3, 4));
    Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(EmitterKind.class);
    order.emitters().forEach(kind -> emitters.put(kind, emitter(kind)));
    double volts = chance.number(1, 12);
    return new PixelType(
        chance.id("own-"),
        order,
        chance.number(0, 5),
        volts,
        emitters,
        chance.flag() ? LineTiming.DEFAULT : line(),
        chance.flag() ? PixelType.usualNeeds(volts) : needs());
  }

  private SupplyNeeds needs() {
    double fail = chance.number(0.5, 5);
    double min = fail + chance.number(0, 5);
    return new SupplyNeeds(fail, min, min + chance.number(0, 20), level(), level());
  }

  private InputLevel level() {
    return new InputLevel(
        chance.flag() ? 0 : chance.number(0, 1), chance.flag() ? 0 : chance.number(0, 6));
  }

  // Each in a corner of its own: emitters in a line mix nothing and are refused.
  private FittedEmitter emitter(EmitterKind kind) {
    Chromaticity point =
        switch (kind) {
          case RED -> new Chromaticity(chance.number(0.5, 0.7), chance.number(0.2, 0.3));
          case GREEN -> new Chromaticity(chance.number(0.1, 0.3), chance.number(0.5, 0.7));
          case BLUE -> new Chromaticity(chance.number(0.1, 0.2), chance.number(0.02, 0.1));
          case WHITE -> new Chromaticity(chance.number(0.2, 0.5), chance.number(0.2, 0.5));
        };
    return new FittedEmitter(new Emitter(point, chance.number(1, 5000)), chance.number(0, 30));
  }

  private LineTiming line() {
    double tolerance = chance.number(0, 200);
    return new LineTiming(
        time(tolerance),
        time(tolerance),
        time(tolerance),
        time(tolerance),
        chance.maybe(this::range),
        chance.number(50, 500));
  }

  private LineTime time(double tolerance) {
    return chance.flag() ? new LineTime.Nominal(chance.number(100, 1000), tolerance) : range();
  }

  private LineTime.Range range() {
    double least = chance.number(100, 1000);
    return new LineTime.Range(least, least + chance.number(0, 1000));
  }

  private EmitterOrder order(int size) {
    return new EmitterOrder(chance.shuffled(List.of(EmitterKind.values()).subList(0, size)));
  }

  private Chain chain(PixelType type) {
    int emitters = type.order().size();
    return new Chain(
        chance.id("c"),
        type,
        chance.whole(1, 8),
        chance.flag() ? type.order() : order(emitters),
        emitters == 4 ? chance.maybeNumber(1667, 25000) : OptionalDouble.empty(),
        pin(),
        chance.once(4) ? Optional.of(feed()) : Optional.empty());
  }

  private DriverOutput output() {
    Optional<OutputDrive> drive = chance.maybe(() -> chance.of(OutputDrive.values()));
    return new DriverOutput(
        chance.id("o"),
        new RandomValues(chance, shape -> true).value(DriverOutput.COLOUR),
        chance.number(0, 500),
        chance.whole(1, 5),
        chance.number(0.5, 10),
        drive.filter(OutputDrive.PIN::equals).isPresent()
            ? OutputSupply.VOLTAGE
            : chance.of(OutputSupply.values()),
        drive,
        pin());
  }

  // Each pin once, as a rig asks for.
  private Optional<Pin> pin() {
    int own = pins++;
    return chance.maybe(() -> new Pin("P" + (char) ('A' + own / 8 % 12) + own % 8));
  }

  private Feed feed() {
    return new RandomValues(chance, shape -> true).record(Feed.SHAPE);
  }

  private Battery battery() {
    return new RandomValues(chance, shape -> true).record(Battery.SHAPE);
  }

  private List<Lamp> lamps(List<Chain> chains, List<DriverOutput> outputs) {
    List<PixelRun> runs = new ArrayList<>();
    for (Chain chain : chains) {
      for (int from = chance.whole(0, 1); from < chain.pixels(); ) {
        int count = chance.whole(1, chain.pixels() - from);
        runs.add(new PixelRun(chain.id(), from, count));
        from += count + chance.whole(0, 1);
      }
    }
    List<Fitting> fittings = new ArrayList<>();
    outputs.forEach(output -> fittings.add(new Fitting.Output(output.id())));
    runs = chance.shuffled(runs);
    while (!runs.isEmpty()) {
      List<PixelRun> some = runs.subList(0, chance.whole(1, Math.min(3, runs.size())));
      fittings.add(new Fitting.Pixels(some));
      some.clear();
    }
    List<Lamp> lamps = new ArrayList<>();
    for (Fitting fitting : chance.shuffled(fittings)) {
      if (!chance.once(4)) {
        lamps.add(lamp("l" + lamps.size() + chance.id("-"), fitting));
      }
    }
    return lamps;
  }

  private Lamp lamp(String id, Fitting fitting) {
    return new Lamp(
        id,
        chance.text(),
        chance.of(LampFunction.values()),
        fitting,
        chance.maybe(
            () ->
                new Place(
                    chance.of(View.values()),
                    chance.number(0, 1),
                    chance.number(0, 1),
                    chance.number(0.001, 1))),
        chance.maybe(() -> new Feel(chance.number(0, 300), chance.number(0, 300))));
  }
}
