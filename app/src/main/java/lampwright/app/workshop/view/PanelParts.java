package lampwright.app.workshop.view;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;

/** What the panels below the ribbons are made of. */
public final class PanelParts {
  private PanelParts() {}

  /** A small button. */
  public static Button button(String id, String words, Runnable run) {
    Button button = new Button(words);
    button.setId(id);
    button.getStyleClass().add("small-toggle");
    button.setOnAction(event -> run.run());
    return button;
  }

  /** Scrolls up and down alone, and is no stop of Tab. */
  public static ScrollPane scrolling(Node content) {
    ScrollPane pane = new ScrollPane(content);
    pane.getStyleClass().add("form");
    pane.setFitToWidth(true);
    pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    pane.setFocusTraversable(false);
    return pane;
  }
}
