package lampwright.app.workshop.view;

import java.nio.file.Path;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.KeyCombination;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.files.FilesModel;
import lampwright.app.workshop.words.Texts;

/** All menus, as the commands say where they are found. */
final class WorkshopMenus {
  private final Texts texts = Texts.of("workshop");
  private final Commands commands;
  private final FilesModel files;

  WorkshopMenus(Commands commands, FilesModel files) {
    this.commands = commands;
    this.files = files;
  }

  MenuBar bar() {
    MenuBar bar = new MenuBar();
    for (CommandMenu menu : CommandMenu.values()) {
      bar.getMenus().add(menu(menu));
    }
    return bar;
  }

  private Menu menu(CommandMenu of) {
    Menu menu = new Menu(texts.get(of.words()));
    for (var group : commands.groups(of)) {
      if (!menu.getItems().isEmpty()) {
        menu.getItems().add(new SeparatorMenuItem());
      }
      for (Command command : group) {
        menu.getItems().add(item(command));
        if (command.id().equals(FilesModel.OPEN)) {
          menu.getItems().add(lastFiles());
        }
      }
    }
    return menu;
  }

  private Menu lastFiles() {
    Menu last = new Menu(texts.get("menu.last"));
    Runnable list =
        () -> {
          last.getItems().clear();
          for (Path file : files.recents().list()) {
            MenuItem item = new MenuItem(file.toString());
            item.setMnemonicParsing(false);
            item.setOnAction(event -> files.open(file));
            last.getItems().add(item);
          }
          last.setDisable(last.getItems().isEmpty());
        };
    files.recents().list().addListener((ListChangeListener<Path>) change -> list.run());
    list.run();
    return last;
  }

  /** The id of the item of a command. */
  static String itemId(Command command) {
    return CommandItems.id(command, "command");
  }

  private static MenuItem item(Command command) {
    MenuItem item = CommandItems.of(command, "command");
    if (!command.shortcut().isEmpty() && !command.plainShortcut()) {
      item.setAccelerator(KeyCombination.valueOf(command.shortcut()));
    }
    return item;
  }
}
