package lampwright.app.workshop.view;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.KeyCombination;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.Commands;

/** The menu that a right click opens: commands of the registry that fit what is under it. */
public final class CommandPopup {
  private final ContextMenu menu = new ContextMenu();
  private Commands commands = new Commands(List.of());

  /** Takes the commands once they are all known. */
  public void setCommands(Commands all) {
    commands = all;
  }

  /**
   * Opens it.
   *
   * @param ids of the commands; empty for a line between
   */
  public void show(Node owner, List<String> ids, double screenX, double screenY) {
    menu.getItems().clear();
    for (String id : ids) {
      menu.getItems().add(id.isEmpty() ? new SeparatorMenuItem() : item(commands.find(id)));
    }
    menu.show(owner, screenX, screenY);
  }

  public void hide() {
    menu.hide();
  }

  /** The key of a command in words; empty if it has none, or is not known. */
  public String key(String id) {
    return commands.all().stream()
        .filter(command -> command.id().equals(id) && !command.shortcut().isEmpty())
        .map(command -> KeyCombination.valueOf(command.shortcut()).getDisplayText())
        .findFirst()
        .orElse("");
  }

  private static MenuItem item(Command command) {
    MenuItem item = CommandItems.of(command, "popup");
    if (!command.shortcut().isEmpty()) {
      // Shown beside the words; the menus of the window listen to the keys.
      item.setAccelerator(KeyCombination.valueOf(command.shortcut()));
    }
    return item;
  }
}
