package lampwright.engine.json;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputLevel;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

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
    List<DriverOutput> some = chains.isEmpty() && outputs.isEmpty() ? List.of(output()) : outputs;
    List<Lamp> lamps = lamps(chains, some);
    RandomValues values =
        values()
            .with(Rig.CHAINS, () -> chains)
            .with(Rig.OUTPUTS, () -> some)
            .with(Rig.LAMPS, () -> lamps)
            .with(Rig.INPUTS, () -> chance.distinct(3, this::input, Input::id));
    if (!matched) {
      values
          .with(Rig.COLOUR_MATCHING, () -> ColourMatching.DIRECT)
          .with(Rig.CURRENT_CAP, () -> CurrentCap.OFF);
    }
    return values.record(Rig.SHAPE);
  }

  private RandomValues values() {
    return new RandomValues(chance, shape -> true);
  }

  private PixelType pixelType() {
    EmitterOrder order = order(chance.whole(3, 4));
    Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(EmitterKind.class);
    order.emitters().forEach(kind -> emitters.put(kind, emitter(kind)));
    double volts = chance.number(1, 12);
    return values()
        .with(PixelType.ID, () -> chance.id("own-"))
        .with(PixelType.ORDER, () -> order)
        .with(PixelType.EMITTERS, () -> emitters)
        .with(PixelType.VOLTS, () -> volts)
        .with(PixelType.NEEDS, () -> chance.flag() ? PixelType.usualNeeds(volts) : needs())
        .record(PixelType.SHAPE);
  }

  // In this order: nothing would come of most that are made of five numbers at random.
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
    return values().with(Emitter.CHROMATICITY, () -> point).record(FittedEmitter.SHAPE);
  }

  private EmitterOrder order(int size) {
    return new EmitterOrder(chance.shuffled(List.of(EmitterKind.values()).subList(0, size)));
  }

  private Chain chain(PixelType type) {
    int emitters = type.order().size();
    RandomValues values =
        values()
            .with(Chain.ID, () -> chance.id("c"))
            .with(Chain.TYPE, () -> type)
            .with(Chain.PIXELS, () -> chance.whole(1, 8))
            .with(Chain.ORDER, () -> chance.flag() ? type.order() : order(emitters))
            .with(Chain.PIN, this::pin);
    if (emitters < 4) {
      values.with(Chain.WHITE_KELVIN, OptionalDouble::empty);
    }
    return values.record(Chain.SHAPE);
  }

  private DriverOutput output() {
    return values()
        .with(DriverOutput.ID, () -> chance.id("o"))
        .with(DriverOutput.PIN, this::pin)
        .record(DriverOutput.SHAPE);
  }

  private Input input() {
    return values()
        .with(Input.ID, () -> chance.id("i"))
        .with(Input.PIN, this::pin)
        .record(Input.SHAPE);
  }

  // Each pin once, as a rig asks for.
  private Optional<Pin> pin() {
    int own = pins++;
    return chance.maybe(
        () -> new Pin("P" + (char) ('A' + own / 8 % 12) + (own % 8 + 8 * chance.whole(0, 3))));
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
    return values().with(Lamp.ID, () -> id).with(Lamp.FITTING, () -> fitting).record(Lamp.SHAPE);
  }
}
