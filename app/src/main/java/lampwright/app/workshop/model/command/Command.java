package lampwright.app.workshop.model.command;

import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableBooleanValue;
import javafx.beans.value.ObservableValue;
import lampwright.app.workshop.words.Texts;

/**
 * Something the builder can do. Menus, keys, help and tests all read it here.
 *
 * @param id unique; the part of the texts and the key of its words in it, such as {@code
 *     files.save.as}
 * @param words for people; changes where it names what it would do
 * @param place where it is found
 * @param shortcut as JavaFX writes key combinations, such as {@code Shortcut+Shift+Z}; without a
 *     modifier it counts where no text is typed; empty if it has none
 * @param enabled whether it can be done now
 * @param run does it
 */
public record Command(
    String id,
    ObservableValue<String> words,
    Place place,
    String shortcut,
    ObservableBooleanValue enabled,
    Runnable run) {
  /** Where a command is found. */
  public sealed interface Place {}

  /**
   * In a menu.
   *
   * @param group commands of a group follow one another, with a line before the next group
   */
  public record InMenu(CommandMenu menu, int group) implements Place {}

  /**
   * In no menu.
   *
   * @param why for those who look for it there
   */
  public record NoMenu(String why) implements Place {}

  /** A command that can always be done and has no shortcut. */
  public static Command of(String id, Place place, Runnable run) {
    return new Command(
        id,
        new ReadOnlyStringWrapper(wordsOf(id)).getReadOnlyProperty(),
        place,
        "",
        new ReadOnlyBooleanWrapper(true).getReadOnlyProperty(),
        run);
  }

  /** A command that turns something on and off. */
  public static Command toggle(String id, Place place, BooleanProperty value) {
    return of(id, place, () -> value.set(!value.get()));
  }

  /** A command of several that do the same to different values. */
  public static <V> Command of(String id, Place place, V value, Consumer<? super V> run) {
    return of(id, place, () -> run.accept(value));
  }

  /** The same with a shortcut. */
  public Command withShortcut(String keys) {
    return new Command(id, words, place, keys, enabled, run);
  }

  /** The same, to be done only while this holds. */
  public Command when(ObservableBooleanValue possible) {
    return new Command(id, words, place, shortcut, possible, run);
  }

  /** The same with words that change. */
  public Command named(ObservableValue<String> changing) {
    return new Command(id, changing, place, shortcut, enabled, run);
  }

  /** Whether its shortcut is a key alone, which types text in a field. */
  public boolean plainShortcut() {
    return !shortcut.isEmpty() && !shortcut.contains("+") && !shortcut.matches("F\\d+");
  }

  private static String wordsOf(String id) {
    int dot = id.indexOf('.');
    return Texts.of(id.substring(0, dot)).get(id.substring(dot + 1));
  }
}
