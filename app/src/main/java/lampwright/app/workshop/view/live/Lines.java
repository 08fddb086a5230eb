package lampwright.app.workshop.view.live;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** Lines of text that are there only while they have something to show; where the focus is. */
final class Lines {
  private Lines() {}

  static Label of(String id, String style) {
    Label line = new Label();
    line.setId(id);
    line.getStyleClass().add(style);
    line.setWrapText(true);
    line.setMinHeight(Region.USE_PREF_SIZE);
    return line;
  }

  /** Whether the focus is on an enabled part of this. */
  static boolean hasFocus(Node node) {
    @Nullable Node at = node.getScene() == null ? null : node.getScene().getFocusOwner();
    boolean enabled = at != null && !at.isDisabled();
    while (at != null && at != node) {
      at = at.getParent();
    }
    return enabled && at != null;
  }

  static void show(Label line, String text) {
    line.setText(text);
    line.setVisible(!text.isEmpty());
    line.setManaged(!text.isEmpty());
  }
}
