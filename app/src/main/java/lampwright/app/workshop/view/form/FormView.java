package lampwright.app.workshop.view.form;

import java.util.Optional;
import javafx.beans.value.ObservableValue;
import javafx.scene.control.ScrollPane;
import lampwright.app.workshop.model.Form;

/** The values of a form, to scroll through where they are higher than the room for them. */
public final class FormView extends ScrollPane {
  private final FormPane pane;

  /**
   * @param form as of {@link FormPane}
   */
  public FormView(FormContext context, ObservableValue<Optional<Form>> form) {
    pane = new FormPane(context, form);
    getStyleClass().add("form");
    setFitToWidth(true);
    setContent(pane);
    form.addListener(
        (of, before, now) -> {
          if (!before.map(Form::structure).equals(now.map(Form::structure))) {
            setVvalue(0);
          }
        });
  }

  /** Gives the focus to the first value. */
  public void focusFirst() {
    pane.focusFirst();
  }
}
