package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.FLAG;
import static lampwright.engine.project.ValueKind.NUMBER;
import static lampwright.engine.project.ValueKind.TEXT;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.Iterables;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.Fault;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;

/** Reads the rig. Its lists are those of the file, with stand-ins where an object is broken. */
final class RigReader implements References {
  private static final ValueKind<ColourMatching> MATCHING =
      ValueKind.choice(ColourMatching.values(), ColourMatching::key);
  private static final ValueKind<CurrentCap> CAP =
      ValueKind.choice(CurrentCap.values(), CurrentCap::key);
  private static final ValueKind<OutputSupply> OUTPUT_SUPPLY =
      ValueKind.choice(OutputSupply.values(), OutputSupply::key);
  private static final ValueKind<OutputDrive> OUTPUT_DRIVE =
      ValueKind.choice(OutputDrive.values(), OutputDrive::key);
  private static final ValueKind<Pin> PIN = ValueKind.text(Pin.ALLOWED, Pin::find);
  private static final List<String> BUILT_IN =
      BuiltInPixelTypes.all().stream().map(PixelType::id).toList();

  private final Names typeNames;
  private final List<PixelType> types;
  private final Names chainNames = new Names();
  private final Names outputNames = new Names();
  private final Names lampNames = new Names();

  /** The chains and lamps of the file. */
  record Result(Optional<Rig> rig, List<Chain> chains, List<Lamp> lamps, Names lampNames) {}

  RigReader(List<PixelType> types, Names typeNames) {
    this.types = types;
    this.typeNames = typeNames;
  }

  Result read(Located at) {
    Fields f = at.fields().expect("supplyVolts", "supplyLimitMilliamps", "dataVolts", "curve");
    f.expect("colourMatching", "whiteFromRgb", "brightnessCap", "currentCap");
    f.expect("feed", "battery", "controller", "clockMegahertz");
    LampReader lampReader = new LampReader(chainNames, outputNames, lampNames);
    List<Chain> chains = f.list("chains", Rig.CHAINS).stream().map(this::chain).toList();
    List<DriverOutput> outputs = f.list("outputs", Rig.OUTPUTS).stream().map(this::output).toList();
    List<Lamp> lamps = f.list("lamps", Rig.LAMPS).stream().map(lampReader::read).toList();
    Optional<Rig> rig =
        f.build(
            () ->
                Optional.of(
                    new Rig(
                        f.optional("supplyVolts", NUMBER, Rig.DEFAULT_SUPPLY_VOLTS),
                        f.optional(
                            "supplyLimitMilliamps", NUMBER, Rig.DEFAULT_SUPPLY_LIMIT_MILLIAMPS),
                        PowerReader.number(f, "dataVolts"),
                        f.find("curve").map(c -> curve(c, f)).orElse(Curve.DEFAULT),
                        f.optional("colourMatching", MATCHING, Rig.DEFAULT_COLOUR_MATCHING),
                        f.optional("whiteFromRgb", FLAG, Rig.DEFAULT_WHITE_FROM_RGB),
                        f.optional("brightnessCap", NUMBER, Rig.DEFAULT_BRIGHTNESS_CAP),
                        f.optional("currentCap", CAP, Rig.DEFAULT_CURRENT_CAP),
                        f.find("feed").flatMap(given -> PowerReader.feed(given, f)),
                        f.find("battery").flatMap(given -> PowerReader.battery(given, f)),
                        PowerReader.controller(f),
                        chains,
                        outputs,
                        lamps)),
            Optional::empty,
            this);
    f.close();
    return new Result(rig, chains, lamps, lampNames);
  }

  @Override
  public boolean excuses(Fault fault) {
    return namesOf(fault).map(names -> names.excuses(fault.value())).orElse(false);
  }

  @Override
  public Collection<String> candidates(Fault fault) {
    return namesOf(fault).map(Names::good).orElse(List.of());
  }

  private Optional<Names> namesOf(Fault fault) {
    if (fault.field().endsWith(".chain")) {
      return Optional.of(chainNames);
    }
    return fault.field().endsWith(".output") ? Optional.of(outputNames) : Optional.empty();
  }

  private Chain chain(Located at) {
    Fields f = at.fields();
    String id = chainNames.read(f);
    PixelType type = type(f);
    int pixels = f.requiredWhole("pixels", Chain.MAX_PIXELS);
    EmitterOrder order = f.optional("order", PixelTypeReader.ORDER, type.order());
    OptionalDouble kelvin = PowerReader.number(f, "whiteKelvin");
    // Of an unknown type any order may be the right one.
    EmitterOrder known = f.sound() ? order : type.order();
    Chain chain =
        f.build(
            () ->
                new Chain(
                    id,
                    type,
                    pixels,
                    known,
                    kelvin,
                    f.given("pin", PIN),
                    f.find("feed").flatMap(given -> PowerReader.feed(given, f))),
            () ->
                new Chain(chainNames.ofStandIn(id, f), PixelTypeReader.STAND_IN, Chain.MAX_PIXELS));
    f.close();
    return chain;
  }

  private PixelType type(Fields f) {
    String id = f.required("pixelType", TEXT, PixelTypeReader.STAND_IN.id());
    Optional<PixelType> type =
        types.stream()
            .filter(own -> own.id().equals(id))
            .findFirst()
            .or(() -> BuiltInPixelTypes.find(id));
    if (typeNames.excuses(id)) {
      f.breaks("pixelType");
      return PixelTypeReader.STAND_IN;
    }
    if (type.isEmpty()) {
      f.report(
          new Fault("pixelType", id, "needs a built-in pixel type or one of pixelTypes"),
          References.to(ImmutableList.copyOf(Iterables.concat(BUILT_IN, typeNames.good()))));
    }
    return type.orElse(PixelTypeReader.STAND_IN);
  }

  private DriverOutput output(Located at) {
    Fields f = at.fields();
    String id = outputNames.read(f);
    f.expect("colour", "milliamps", "ledsInSeries", "forwardVolts", "supply");
    Optional<OutputDrive> drive = f.given("drive", OUTPUT_DRIVE);
    DriverOutput output =
        f.build(
            () ->
                new DriverOutput(
                    id,
                    ColourReader.givenSrgb(f, "colour").orElse(DriverOutput.DEFAULT_COLOUR),
                    f.optional("milliamps", NUMBER, DriverOutput.DEFAULT_MILLIAMPS),
                    f.whole("ledsInSeries", DriverOutput.DEFAULT_LEDS_IN_SERIES),
                    f.optional("forwardVolts", NUMBER, DriverOutput.DEFAULT_FORWARD_VOLTS),
                    f.optional("supply", OUTPUT_SUPPLY, DriverOutput.usualSupply(drive)),
                    drive,
                    f.given("pin", PIN)),
            () -> DriverOutput.of(outputNames.ofStandIn(id, f)));
    f.close();
    return output;
  }

  private static Curve curve(Located at, Fields parent) {
    Fields f = at.fields();
    String kind = f.required("kind", CurveKinds.KIND, CurveKinds.LINEAR);
    if (!f.sound()) {
      // Of an unknown kind gamma may be a parameter.
      f.expect("gamma");
    }
    Curve curve =
        f.build(
            () ->
                kind.equals(CurveKinds.POWER)
                    ? new Curve.Power(f.optional("gamma", NUMBER, CurveKinds.DEFAULT_GAMMA))
                    : CurveKinds.of(kind),
            () -> Curve.DEFAULT);
    f.close();
    if (!f.sound()) {
      parent.breaks("curve");
    }
    return curve;
  }
}
