package lampwright.app.workshop.view.form;

import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** Texts that count once they are entered: by Enter, or by leaving the field. */
public final class Entered {
  private Entered() {}

  /** Runs this whenever the text is entered. */
  public static void listen(TextField field, Runnable entered) {
    field
        .focusedProperty()
        .addListener(
            (of, before, now) -> {
              if (!now) {
                entered.run();
              }
            });
    field.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            entered.run();
          }
        });
  }
}
