package lampwright.engine.json;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import lampwright.engine.check.Fault;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.field.Field;
import lampwright.engine.field.ListType;

/**
 * The fields of one object of the file. What is wrong with a field is reported where it is; the
 * caller then gets a stand-in, so that all other fields are read and checked too.
 */
final class Fields {
  private final Json.Obj object;
  private final boolean silent;
  private final Where where;
  private final Problems problems;
  private final Set<String> known = new LinkedHashSet<>();
  private final Set<String> broken = new HashSet<>();
  private boolean strange;

  /**
   * @param object empty if the value is no object, which was reported: then nothing more is
   */
  Fields(Located at, Optional<Json.Obj> object) {
    this.object =
        object.orElseGet(() -> new Json.Obj(at.json().line(), at.json().column(), List.of()));
    this.silent = object.isEmpty();
    this.where = at.where();
    this.problems = at.problems();
  }

  /** Names fields in the order in which messages list them, before they are asked for. */
  void expect(List<String> names) {
    known.addAll(names);
  }

  int line() {
    return object.line();
  }

  int column() {
    return object.column();
  }

  boolean has(String name) {
    return object.find(name).isPresent();
  }

  /** The value of a field, if it is given. */
  Optional<Located> find(String name) {
    known.add(name);
    return object.find(name).map(json -> new Located(json, where.field(name), problems));
  }

  /** The value of a field; empty if it is not given, or not accepted, which is reported. */
  <T> Optional<T> given(String name, ValueKind<T> kind) {
    Optional<Located> at = find(name);
    Optional<T> value = at.flatMap(there -> there.as(kind));
    if (at.isPresent() && value.isEmpty()) {
      breaks(name);
    }
    return value;
  }

  /** The same of a field that must be given: it is reported where it is not. */
  <T> Optional<T> required(String name, ValueKind<T> kind) {
    if (!has(name)) {
      missing(name, kind.allowed());
    }
    return given(name, kind);
  }

  /**
   * The members of a list; none if it is not given. Of a list with more than it may have, which is
   * reported, no more than that: a file of millions costs no more than a full one.
   */
  List<Located> list(Field<?, ?> field, ListType<?> type) {
    Optional<Located> at = find(field.name());
    if (at.isEmpty() && field.need() == Field.Need.REQUIRED) {
      missing(field.name(), ValueKind.LIST.allowed());
    }
    if (at.isEmpty()) {
      return List.of();
    }
    Optional<List<Json>> members = at.get().as(ValueKind.LIST);
    if (members.isEmpty() || !at.get().within(type.limit(), members.get().size())) {
      breaks(field.name());
    }
    return members
        .map(m -> at.get().items(m.subList(0, Math.min(m.size(), type.limit().max()))))
        .orElse(List.of());
  }

  /** Reports a field that is not given. */
  void missing(String name, String allowed) {
    known.add(name);
    breaks(name);
    if (!silent) {
      problems.error(where.field(name), line(), column(), "missing", allowed);
    }
  }

  /** Marks a field whose value was reported elsewhere. */
  void breaks(String name) {
    broken.add(name);
  }

  /** Whether a field has been reported. */
  boolean isBroken(String name) {
    return broken.contains(name);
  }

  /** Whether any field so far, or the object itself, was reported. */
  boolean sound() {
    return broken.isEmpty() && !strange && !silent;
  }

  /**
   * Makes a record from the fields and reports what it refuses.
   *
   * @return the stand-in if anything is wrong with these fields
   */
  <T> T build(Supplier<T> constructor, Supplier<T> standIn) {
    return build(constructor, standIn, References.NONE);
  }

  <T> T build(Supplier<T> constructor, Supplier<T> standIn, References references) {
    try {
      T built = constructor.get();
      if (sound()) {
        return built;
      }
    } catch (InvalidModelException refused) {
      refused.faults().forEach(fault -> report(fault, references));
    }
    return standIn.get();
  }

  /** Reports a fault at the field that its path names, unless that field was reported before. */
  void report(Fault fault, References references) {
    if (silent || references.excuses(fault)) {
      return;
    }
    String first = fault.field().split("[.\\[]", 2)[0];
    if (broken.contains(first) && fault.field().equals(first)) {
      return;
    }
    broken.add(first);
    Json at = FaultPath.find(object, fault.field());
    problems.error(
        where.field(fault.field()),
        at.line(),
        at.column(),
        FaultPath.shown(at, fault),
        fault.allowed(),
        fault.value(),
        references.candidates(fault));
  }

  /** Reports fields that nobody asked for. */
  void close() {
    List<Json.Member> unknown =
        object.members().stream().filter(member -> !known.contains(member.name())).toList();
    if (unknown.isEmpty()) {
      return;
    }
    strange = true;
    // Once for all of them, however many there are. A field that is there already was not
    // meant by a misspelt one.
    List<String> unused = known.stream().filter(name -> !has(name)).toList();
    String allowed =
        (known.size() == 1 ? "must be " : "must be one of ") + String.join(", ", known);
    for (Json.Member member : unknown) {
      problems.error(
          where.field(member.name()),
          member.line(),
          member.column(),
          "unknown field",
          allowed,
          member.name(),
          unused);
    }
  }
}
