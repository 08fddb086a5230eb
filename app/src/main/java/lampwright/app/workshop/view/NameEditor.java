package lampwright.app.workshop.view;

import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** A field over a drawn name, in which it is changed: Enter takes it, Escape does not. */
public final class NameEditor extends TextField {
  private final Node owner;
  private Consumer<String> taken = name -> {};

  /**
   * @param owner has the focus again afterwards
   */
  public NameEditor(Node owner) {
    this.owner = owner;
    setId("name-editor");
    setManaged(false);
    setVisible(false);
    setOnAction(event -> end(true));
    addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            end(false);
            event.consume();
          }
        });
    focusedProperty()
        .addListener(
            (of, before, now) -> {
              if (!now) {
                end(true);
              }
            });
  }

  /** Edits a name at a place of the owner. */
  public void edit(
      double x, double y, double width, String words, String name, Consumer<String> take) {
    taken = take;
    setAccessibleText(words);
    setText(name);
    resizeRelocate(x, y, Math.max(80, width), prefHeight(-1));
    setVisible(true);
    requestFocus();
    selectAll();
  }

  private void end(boolean take) {
    if (isVisible()) {
      setVisible(false);
      Consumer<String> to = taken;
      taken = name -> {};
      if (take) {
        to.accept(getText().strip());
      }
      owner.requestFocus();
    }
  }
}
