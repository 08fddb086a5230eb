package lampwright.app.workshop.model.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import lampwright.app.workshop.words.Texts;

/**
 * What the keyboard and the mouse do, a row each.
 *
 * @param rows commands with a shortcut in the order of the menus, then what is done in each part
 */
public record KeyTable(List<Row> rows) {
  /**
   * One of them.
   *
   * @param place the menu, or the part of the window
   * @param what it does
   * @param keys as people read them
   */
  public record Row(String place, String what, String keys) {
    private boolean has(String word) {
      return (place + " " + what + " " + keys).toLowerCase(Locale.ROOT).contains(word);
    }
  }

  public KeyTable {
    rows = List.copyOf(rows);
  }

  /**
   * The table of some commands.
   *
   * @param keys the words for a shortcut, such as {@code Ctrl+S}
   */
  public static KeyTable of(Commands commands, UnaryOperator<String> keys) {
    Texts texts = Texts.of("workshop");
    List<Row> rows = new ArrayList<>();
    for (CommandMenu menu : CommandMenu.values()) {
      for (Command command : commands.groups(menu).stream().flatMap(List::stream).toList()) {
        if (!command.shortcut().isEmpty()) {
          rows.add(
              new Row(
                  texts.get(menu.words()),
                  command.words().getValue(),
                  keys.apply(command.shortcut())));
        }
      }
    }
    // Place, keys and what they do, with bars between them, a line each.
    texts
        .get("keys.gestures")
        .lines()
        .map(line -> line.split(" *\\| *"))
        .forEach(
            cells -> {
              rows.add(new Row(cells[0], cells[2], cells[1]));
            });
    return new KeyTable(rows);
  }

  /** The rows that have every word of a query, in any of their texts. */
  public List<Row> matching(String query) {
    List<String> words = List.of(query.strip().toLowerCase(Locale.ROOT).split("\\s+"));
    return rows.stream().filter(row -> words.stream().allMatch(row::has)).toList();
  }
}
