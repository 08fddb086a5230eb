package lampwright.app.workshop.view;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.MenuBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.shape.SVGPath;
import lampwright.app.workshop.words.Texts;

/** The head of the sheet: the program's mark, the menus, and what a builder ends with. */
final class HeaderBar extends HBox {
  HeaderBar(MenuBar menus, Node notice, Runnable export) {
    Texts texts = Texts.of("workshop");
    getStyleClass().add("header");
    getChildren().setAll(mark());
    HBox.setHgrow(menus, Priority.ALWAYS);
    Button exporting = new Button(texts.get("header.export"));
    exporting.setId("header-export");
    exporting.getStyleClass().add("primary");
    exporting.setOnAction(event -> export.run());
    getChildren().addAll(menus, notice, exporting);
  }

  /** The program's mark and name. */
  static List<Node> mark() {
    SVGPath lamp = new SVGPath();
    lamp.setContent(Signs.LAMP);
    lamp.getStyleClass().add("header-lamp");
    Label name = new Label(Texts.of("workshop").get("mark"));
    name.getStyleClass().add("header-mark");
    return List.of(lamp, name);
  }
}
