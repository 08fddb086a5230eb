package lampwright.app.workshop.view.form;

import java.util.Optional;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.words.CueWords;

/** The texts of settings. */
public final class Words {
  private final Texts texts = Texts.of("settings");

  /** What a setting is called. */
  public String label(String key) {
    return texts.get(key);
  }

  /** What it is for. */
  public Optional<String> hint(String key) {
    return texts.find(key + ".hint");
  }

  /** The title of a group of settings. */
  public String group(String key) {
    return texts.get("group." + key);
  }

  /** A value of a choice; its key where that is a name by itself, such as a part number. */
  public String choice(String group, String key) {
    return texts.find(group + "." + key).or(() -> CueWords.choice(group, key)).orElse(key);
  }

  /** What an optional choice is called that nothing is selected of. */
  String notSet(String key) {
    return texts.find(key + ".notSet").orElseGet(() -> texts.get("maybe.notSet"));
  }

  /** A unit; empty for none. */
  public String unit(String key) {
    return key.isEmpty() ? "" : texts.get("unit." + key);
  }

  /** What an amount may be, such as {@code 1 to 60 V}. */
  String range(Kind.Amount kind) {
    return range("range", kind);
  }

  /** What is wrong with a number that is outside of it. */
  String outOfRange(Kind.Amount kind) {
    return range("range.wrong", kind);
  }

  private String range(String key, Kind.Amount kind) {
    String unit = unit(kind.unit());
    String text = texts.get(key, NumberText.of(kind.min()), NumberText.of(kind.max()), unit);
    return unit.isEmpty() ? text.substring(0, text.length() - 1) : text;
  }

  /** Another text of forms. */
  public String get(String key, Object... values) {
    return values.length == 0 ? texts.get(key) : texts.get(key, values);
  }
}
