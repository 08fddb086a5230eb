package lampwright.app.workshop.view.form;

import javafx.scene.Node;

/**
 * The control of one value.
 *
 * @param node what is shown
 * @param focus the part of it that takes the focus
 */
public record Field(Node node, Node focus) {
  static Field of(Node node) {
    return new Field(node, node);
  }
}
