package lampwright.app.workshop.view.live;

import javafx.scene.control.Label;
import javafx.scene.layout.Region;

/** Lines of text that are there only while they have something to show. */
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

  static void show(Label line, String text) {
    line.setText(text);
    line.setVisible(!text.isEmpty());
    line.setManaged(!text.isEmpty());
  }
}
