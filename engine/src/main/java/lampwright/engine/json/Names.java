package lampwright.engine.json;

import com.google.common.base.Ascii;
import com.google.common.base.CharMatcher;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import lampwright.engine.check.Checks;

/**
 * The ids of one list of the file. An object that is broken stays in its list as a stand-in, so
 * that the places in the list remain, and what names it is not reported as well.
 */
final class Names {
  private static final CharMatcher NOT_OF_IDS =
      CharMatcher.inRange('a', 'z').or(CharMatcher.inRange('0', '9')).negate();

  private final Set<String> good = new LinkedHashSet<>();
  private final Set<String> excused = new HashSet<>();
  private final Set<String> badLetters = new HashSet<>();
  private final List<String> places = new ArrayList<>();
  private boolean any;

  /** Names where the list itself is missing: whatever name is used, that is the reason. */
  static Names all() {
    Names names = new Names();
    names.any = true;
    return names;
  }

  /** Reads the id of an object of the list; a stand-in if there is none to read. */
  String read(Fields fields) {
    String id = fields.required("id", ValueKind.TEXT).orElse("");
    if (id.isEmpty()) {
      // The empty id stays: it was reported as missing, or the record reports it.
      return fields.sound() ? id : standIn(fields.line(), fields.column());
    }
    if (valid(id)) {
      good.add(id);
    } else {
      badLetters.add(letters(id));
    }
    return id;
  }

  /** The id with which the stand-in of a broken object is made. */
  String ofStandIn(String id, Fields fields) {
    excused.add(id);
    return valid(id) ? id : standIn(fields.line(), fields.column());
  }

  /** An id for a reference that cannot be read. */
  String standIn(int line, int column) {
    String id = "unnamed-at-line-" + line + "-column-" + column;
    excused.add(id);
    return id;
  }

  /**
   * The same for every list of references in which one at this place can't be read: a file of
   * millions needs no more of them than its longest list.
   */
  String standIn(int index) {
    while (places.size() <= index) {
      String id = "unnamed-" + places.size();
      excused.add(id);
      places.add(id);
    }
    return places.get(index);
  }

  /**
   * Whether what is wrong with a name follows from what was reported: that the id which it names is
   * bad, or written in another way there because of that.
   */
  boolean excuses(String id) {
    return any || excused.contains(id) || badLetters.contains(letters(id));
  }

  /** The ids that can be referred to. */
  Collection<String> good() {
    return good;
  }

  private static String letters(String id) {
    return NOT_OF_IDS.removeFrom(Ascii.toLowerCase(id));
  }

  private static boolean valid(String id) {
    return Checks.of("id").id("id", id).faults().isEmpty();
  }
}
