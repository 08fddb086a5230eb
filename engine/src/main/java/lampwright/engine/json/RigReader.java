package lampwright.engine.json;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.Iterables;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lampwright.engine.check.Fault;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.ListType;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;

/**
 * Reads the rig: whatever names another part of it. Its lists are those of the file, with stand-ins
 * where an object is broken.
 */
final class RigReader implements NamedReferences {
  private final ShapeReader reader;
  private final Names typeNames;
  private final List<PixelType> types;
  private final Names chainNames = new Names();
  private final Names outputNames = new Names();
  private final Names lampNames = new Names();
  private final Names inputNames = new Names();

  /** The chains, lamps and inputs of the file. */
  record Result(
      Optional<Rig> rig,
      List<Chain> chains,
      List<Lamp> lamps,
      List<Input> inputs,
      Names lampNames,
      Names inputNames) {
    /** Of a file without a rig. */
    static Result missing() {
      return new Result(
          Optional.empty(), List.of(), List.of(), List.of(), Names.all(), Names.all());
    }
  }

  RigReader(ShapeReader reader, List<PixelType> types, Names typeNames) {
    this.reader = reader;
    this.types = types;
    this.typeNames = typeNames;
    reader.inPlaceOf(PixelRun.SHAPE, this::brokenRun);
  }

  Result read(Located at) {
    Fields f = at.fields();
    f.expect(Rig.SHAPE.names());
    List<Chain> chains = members(f, Rig.CHAINS, this::chain);
    List<DriverOutput> outputs = members(f, Rig.OUTPUTS, this::output);
    List<Lamp> lamps = members(f, Rig.LAMPS, this::lamp);
    List<Input> inputs = members(f, Rig.INPUTS, this::input);
    Draft<Rig> draft =
        Rig.SHAPE
            .draft()
            .set(Rig.CHAINS, chains)
            .set(Rig.OUTPUTS, outputs)
            .set(Rig.LAMPS, lamps)
            .set(Rig.INPUTS, inputs);
    reader.fill(Rig.SHAPE, f, draft);
    Optional<Rig> rig = f.build(() -> Optional.of(draft.make()), Optional::empty, this);
    f.close();
    return new Result(rig, chains, lamps, inputs, lampNames, inputNames);
  }

  @Override
  public Optional<Names> namesOf(Fault fault) {
    if (fault.field().endsWith(".chain")) {
      return Optional.of(chainNames);
    }
    return fault.field().endsWith(".output") ? Optional.of(outputNames) : Optional.empty();
  }

  /** The members of a list of the file, as they are read. */
  static <R, E> List<E> members(Fields f, Field<R, List<E>> field, Function<Located, E> member) {
    return members(f, field).stream().map(member).toList();
  }

  /** The same, as the file has them. */
  static <R, E> List<Located> members(Fields f, Field<R, List<E>> field) {
    return f.list(field, (ListType<?>) field.type());
  }

  private Chain chain(Located at) {
    Fields f = at.fields();
    String id = chainNames.read(f);
    Draft<Chain> draft = Chain.SHAPE.draft().set(Chain.ID, id).set(Chain.TYPE, type(f));
    reader.fill(Chain.SHAPE, f, draft);
    if (!f.sound()) {
      // Of an unknown type any order may be the right one.
      draft.set(Chain.ORDER, draft.get(Chain.TYPE).order());
    }
    Chain chain =
        f.build(
            draft::make,
            () -> Chain.SHAPE.draft().set(Chain.ID, chainNames.ofStandIn(id, f)).make());
    f.close();
    return chain;
  }

  private PixelType type(Fields f) {
    Optional<String> id = f.required(Chain.TYPE.name(), ValueKind.TEXT);
    if (id.isEmpty() || typeNames.excuses(id.get())) {
      f.breaks(Chain.TYPE.name());
      return BuiltInPixelTypes.standIn();
    }
    Optional<PixelType> type =
        types.stream()
            .filter(own -> own.id().equals(id.get()))
            .findFirst()
            .or(() -> BuiltInPixelTypes.find(id.get()));
    if (type.isEmpty()) {
      f.report(
          new Fault(
              Chain.TYPE.name(), id.get(), "must be a built-in pixel type or one of pixelTypes"),
          References.to(
              ImmutableList.copyOf(Iterables.concat(BuiltInPixelTypes.ids(), typeNames.good()))));
    }
    return type.orElseGet(BuiltInPixelTypes::standIn);
  }

  private DriverOutput output(Located at) {
    Fields f = at.fields();
    String id = outputNames.read(f);
    Draft<DriverOutput> draft = DriverOutput.SHAPE.draft().set(DriverOutput.ID, id);
    reader.fill(DriverOutput.SHAPE, f, draft);
    DriverOutput output = f.build(draft::make, () -> DriverOutput.of(outputNames.ofStandIn(id, f)));
    f.close();
    return output;
  }

  private Input input(Located at) {
    Fields f = at.fields();
    String id = inputNames.read(f);
    Draft<Input> draft = Input.SHAPE.draft().set(Input.ID, id);
    reader.fill(Input.SHAPE, f, draft);
    Input input =
        f.build(draft::make, () -> Input.of(inputNames.ofStandIn(id, f), draft.get(Input.KIND)));
    f.close();
    return input;
  }

  // On a chain of which nobody says that it is not there.
  private PixelRun brokenRun(Located at) {
    return new PixelRun(chainNames.standIn(at.json().line(), at.json().column()), 0, 1);
  }

  private Lamp lamp(Located at) {
    Fields f = at.fields();
    String id = lampNames.read(f);
    Draft<Lamp> draft = Lamp.SHAPE.draft().set(Lamp.ID, id);
    reader.fill(Lamp.SHAPE, f, draft);
    Lamp lamp =
        f.build(
            draft::make,
            () ->
                Lamp.ofOutput(
                    lampNames.ofStandIn(id, f), outputNames.standIn(f.line(), f.column())));
    f.close();
    return lamp;
  }
}
