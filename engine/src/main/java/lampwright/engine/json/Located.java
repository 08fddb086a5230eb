package lampwright.engine.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.check.ListLimit;

/** A value of the file, where it is, and where to report what is wrong with it. */
record Located(Json json, Where where, Problems problems) {
  /** The value; empty if it is of another kind, which is then reported. */
  <T> Optional<T> as(ValueKind<T> kind) {
    Optional<T> value = kind.read(json);
    if (value.isEmpty()) {
      boolean type = kind.type().isInstance(json);
      String name = json instanceof Json.Text text ? text.value() : "";
      String allowed = kind.allowed();
      if (json instanceof Json.Num number && type) {
        allowed = better(number.raw(), allowed);
      }
      problems.error(
          where,
          json.line(),
          json.column(),
          type ? json.shown() : json.shownWithType(),
          allowed,
          name,
          kind.names());
    }
    return value;
  }

  /** The fields of an object; if it is none, that is reported, and it seems empty. */
  Fields fields(String allowed) {
    return new Fields(this, as(ValueKind.object(allowed)));
  }

  Fields fields() {
    return fields(ValueKind.OBJECT.allowed());
  }

  /** The members of a list. */
  List<Located> items(List<Json> list) {
    List<Located> items = new ArrayList<>(list.size());
    for (int i = 0; i < list.size(); i++) {
      items.add(new Located(list.get(i), where.index(i), problems));
    }
    return items;
  }

  /** Whether a list has as many members as it may; if not, that is reported. */
  boolean within(ListLimit limit, int count) {
    // Too few are a matter of the record: what it has may be more than what the file gives.
    if (count <= limit.max()) {
      return true;
    }
    limit.fault("", count).ifPresent(fault -> error(fault.value(), fault.allowed()));
    return false;
  }

  void error(String value, String allowed) {
    problems.error(where, json.line(), json.column(), value, allowed);
  }

  // Numbers that are refused for their length or smallness are numbers all the same.
  private static String better(String raw, String allowed) {
    if (raw.length() > Numbers.MAX_LENGTH) {
      return "must have at most " + Numbers.MAX_LENGTH + " characters";
    }
    boolean lost =
        allowed.equals(ValueKind.NUMBER.allowed())
            && Numbers.decimal(raw).isPresent()
            && Numbers.nearest(raw).isEmpty();
    return lost ? "must be 0, or further from 0" : allowed;
  }
}
