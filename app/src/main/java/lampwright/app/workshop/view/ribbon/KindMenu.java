package lampwright.app.workshop.view.ribbon;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;
import javafx.scene.layout.Region;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.pattern.Patterns;

/** The list of patterns for a fresh cue, offered where the cue will stand. */
final class KindMenu {
  private static final String ID = "kind-";

  private final Region owner;
  private final CueCommands commands;
  private final ContextMenu menu = new ContextMenu();

  /**
   * @param owner is what the list lies over; it has the focus again when one was selected
   */
  KindMenu(Region owner, CueCommands commands) {
    this.owner = owner;
    this.commands = commands;
    for (String kind : Patterns.kinds()) {
      MenuItem item = new MenuItem(Titles.ofKind(kind));
      item.setId(ID + kind);
      menu.getItems().add(item);
    }
  }

  /** Shows the list at a point of its owner, for a cue of these lamps. */
  void offer(List<String> lamps, BigDecimal atMs, double x, double y) {
    for (MenuItem item : menu.getItems()) {
      item.setOnAction(
          event -> {
            commands.add(item.getId().substring(ID.length()), lamps, atMs, Optional.empty());
            owner.requestFocus();
          });
    }
    var at = owner.localToScreen(x, y);
    if (at != null) {
      menu.show(owner, at.getX(), at.getY());
    }
  }

  void hide() {
    menu.hide();
  }
}
