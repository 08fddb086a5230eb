package lampwright.app.workshop.view.form;

import java.util.Optional;
import javafx.beans.value.ObservableValue;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import org.jspecify.annotations.Nullable;

/**
 * The values of a form, group by group. It is built anew only for a form of another structure, so
 * that the focus stays where it is while values change.
 */
public final class FormPane extends FlowPane {
  private final FormContext context;
  private @Nullable Object structure;
  private @Nullable Node first;

  /**
   * @param form what is shown; nothing while it is empty. A form of the same structure must have
   *     the same slots as the one before
   */
  public FormPane(FormContext context, ObservableValue<Optional<Form>> form) {
    super(24, 12);
    this.context = context;
    getStyleClass().add("form-groups");
    setRowValignment(VPos.TOP);
    form.addListener((of, before, now) -> show(now));
    show(form.getValue());
  }

  /** Gives the focus to the first value. */
  public void focusFirst() {
    if (first != null) {
      first.requestFocus();
    }
  }

  private void show(Optional<Form> form) {
    Object wanted = form.map(Form::structure).orElse(null);
    if (wanted != null && wanted.equals(structure)) {
      return;
    }
    structure = wanted;
    first = null;
    getChildren().clear();
    form.ifPresent(s -> s.groups().forEach(group -> getChildren().add(group(group))));
  }

  private Node group(Form.Group group) {
    Label title = new Label(context.words().group(group.key()));
    title.getStyleClass().add("form-title");
    GridPane grid = new GridPane();
    grid.getStyleClass().add("form-grid");
    grid.setHgap(10);
    grid.setVgap(6);
    ColumnConstraints names = new ColumnConstraints();
    names.setMinWidth(USE_PREF_SIZE);
    grid.getColumnConstraints().add(names);
    int row = 0;
    for (Slot<?> slot : group.slots()) {
      Label name = new Label(context.words().label(slot.key()));
      name.getStyleClass().add("form-name");
      GridPane.setValignment(name, VPos.TOP);
      Field field = context.field(slot);
      field.focus().setId("field-" + slot.key().replace('.', '-'));
      name.setLabelFor(field.focus());
      context
          .words()
          .hint(slot.key())
          .ifPresent(
              hint -> {
                Tooltip tip = new Tooltip(hint);
                tip.setWrapText(true);
                tip.setMaxWidth(420);
                name.setTooltip(tip);
                field.focus().setAccessibleHelp(hint);
              });
      grid.addRow(row++, name, field.node());
      if (first == null) {
        first = field.focus();
      }
    }
    return new VBox(4, title, grid);
  }
}
