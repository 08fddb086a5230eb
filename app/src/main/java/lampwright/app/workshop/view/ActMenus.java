package lampwright.app.workshop.view;

import java.util.List;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuItem;
import javafx.scene.input.KeyCombination;
import lampwright.app.workshop.model.Act;
import lampwright.app.workshop.words.Texts;

/** Menus made of acts. */
final class ActMenus {
  private ActMenus() {}

  /**
   * A menu.
   *
   * @param texts has the acts' keys; a text may mark its letter with an underscore
   */
  static Menu menu(String title, Texts texts, List<Act> acts) {
    Menu menu = new Menu(title);
    acts.forEach(act -> menu.getItems().add(item(texts, act)));
    return menu;
  }

  static MenuItem item(Texts texts, Act act) {
    MenuItem item = new MenuItem(texts.get(act.key()));
    item.setId("act-" + act.key().replace('.', '-'));
    item.setMnemonicParsing(true);
    if (!act.keys().isEmpty()) {
      item.setAccelerator(KeyCombination.valueOf(act.keys()));
    }
    item.disableProperty()
        .bind(
            javafx.beans.binding.Bindings.createBooleanBinding(
                () -> !act.possible().get(), act.possible()));
    item.setOnAction(event -> act.run().run());
    return item;
  }
}
