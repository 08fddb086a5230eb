package lampwright.engine.json;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** An object or list whose end has not come. */
final class OpenJson {
  private final boolean object;
  private final int line;
  private final int column;
  private final Where where;
  private final Problems problems;
  private final List<Json> items = new ArrayList<>();
  private final List<Json.Member> members = new ArrayList<>();
  private final Map<String, Json.Member> byName = new HashMap<>(0);
  private String name = "";
  private int nameLine;
  private int nameColumn;

  OpenJson(boolean object, int line, int column, Where where, Problems problems) {
    this.object = object;
    this.line = line;
    this.column = column;
    this.where = where;
    this.problems = problems;
  }

  void name(String next, int atLine, int atColumn) {
    name = next;
    nameLine = atLine;
    nameColumn = atColumn;
  }

  Where next() {
    return object ? where.field(name) : where.index(items.size());
  }

  void add(Json value) {
    if (!object) {
      items.add(value);
      return;
    }
    Json.Member member = new Json.Member(nameLine, nameColumn, name, value);
    Json.Member earlier = byName.putIfAbsent(name, member);
    if (earlier == null) {
      members.add(member);
    } else {
      problems.error(
          where.field(name),
          nameLine,
          nameColumn,
          "duplicate field",
          "must be given once; it is first given at line "
              + earlier.line()
              + ", column "
              + earlier.column());
    }
  }

  Json closed() {
    return object
        ? new Json.Obj(line, column, List.copyOf(members))
        : new Json.Arr(line, column, List.copyOf(items));
  }
}
