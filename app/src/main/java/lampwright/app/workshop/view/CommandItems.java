package lampwright.app.workshop.view;

import javafx.beans.binding.Bindings;
import javafx.scene.control.MenuItem;
import lampwright.app.workshop.model.command.Command;

/** Commands as items of menus, be it in the bar or of a right click. */
final class CommandItems {
  private CommandItems() {}

  /**
   * An item that has the words of a command, can be pressed while it can be done, and does it.
   *
   * @param menu the first part of its id, which is followed by that of the command
   */
  static MenuItem of(Command command, String menu) {
    MenuItem item = new MenuItem();
    item.textProperty().bind(command.words());
    item.setId(id(command, menu));
    // Words that change may name what the builder named.
    item.setMnemonicParsing(false);
    item.disableProperty()
        .bind(Bindings.createBooleanBinding(() -> !command.enabled().get(), command.enabled()));
    item.setOnAction(event -> command.run().run());
    return item;
  }

  /** The id of such an item. */
  static String id(Command command, String menu) {
    return menu + "-" + command.id().replace('.', '-');
  }
}
