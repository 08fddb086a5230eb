package lampwright.app.workshop.view.situation;

import java.util.Optional;
import java.util.Set;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.situation.SituationsModel;
import lampwright.app.workshop.view.form.Field;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.app.workshop.words.Texts;
import org.jspecify.annotations.Nullable;

/**
 * The conditions of the selected situation, each a row that is read as a sentence. Rows are built
 * anew only where a condition becomes one of another kind; the focus stays on the same field.
 */
final class ConditionsPane extends VBox {
  /** What needs no name in the sentence. */
  private static final Set<String> NAMELESS =
      Set.of(
          "condition.source",
          "condition.kind",
          "condition.aboveUs",
          "condition.belowUs",
          "condition.fromUs",
          "condition.withinMs");

  private final Texts texts = Texts.of("situations");
  private final FormContext context;
  private final SituationsModel model;
  private final VBox rows = new VBox();
  private final Label hint = new Label();
  private final Button add = new Button();
  private @Nullable Object structure;

  ConditionsPane(FormContext context, SituationsModel model) {
    this.context = context;
    this.model = model;
    getStyleClass().add("conditions");
    Label title = new Label(texts.get("group.conditions"));
    title.getStyleClass().add("form-title");
    hint.getStyleClass().add("form-hint");
    hint.setWrapText(true);
    add.setText(texts.get("button.addCondition"));
    add.setId("condition-add");
    add.getStyleClass().add("small-toggle");
    add.setOnAction(event -> model.addCondition());
    rows.getStyleClass().add("condition-rows");
    getChildren().setAll(title, rows, hint, add);
    model.conditionsProperty().addListener((of, before, now) -> show(now));
    show(model.conditionsProperty().get());
  }

  private void show(Optional<Form> form) {
    Object wanted = form.map(Form::structure).orElse(null);
    if (wanted != null && wanted.equals(structure)) {
      return;
    }
    Optional<String> focus = focused();
    structure = wanted;
    rows.getChildren().clear();
    form.ifPresent(
        f -> {
          for (int i = 0; i < f.groups().size(); i++) {
            rows.getChildren().add(row(i, f.groups().get(i)));
          }
        });
    boolean none = rows.getChildren().isEmpty();
    add.setDisable(!model.hasSources());
    hint.setText(
        (none ? texts.get("conditions.none") : "")
            + (model.hasSources() ? "" : " " + texts.get("conditions.noSources")));
    hint.setVisible(!hint.getText().isBlank());
    hint.setManaged(hint.isVisible());
    focus
        .map(id -> rows.lookup("#" + id))
        .ifPresent(
            node -> {
              applyCss();
              node.requestFocus();
            });
  }

  private Optional<String> focused() {
    Node owner = getScene() == null ? null : getScene().getFocusOwner();
    for (Node at = owner; at != null; at = at.getParent()) {
      if (at == rows) {
        return Optional.ofNullable(owner.getId());
      }
    }
    return Optional.empty();
  }

  private Node row(int place, Form.Group group) {
    String number = Integer.toString(place + 1);
    Label title = new Label(number);
    title.getStyleClass().add("condition-number");
    FlowPane sentence = new FlowPane(6, 4);
    sentence.setAlignment(Pos.CENTER_LEFT);
    sentence.getChildren().add(title);
    for (Slot<?> slot : group.slots()) {
      Field field = context.field(slot);
      field.focus().setId("condition-" + number + "-" + slot.key().replace("condition.", ""));
      field
          .focus()
          .setAccessibleText(texts.get("condition.row", number, context.words().label(slot.key())));
      context.words().hint(slot.key()).ifPresent(field.focus()::setAccessibleHelp);
      sentence.getChildren().add(named(slot, field));
    }
    if (model.stick(place).isPresent()) {
      Button here = button("setHere", number, () -> model.setHere(place));
      here.setText(texts.get("button.setHere"));
      here.setAccessibleText(texts.get("button.setHere.hint", number));
      here.setTooltip(new Tooltip(texts.get("button.setHere.hint", number)));
      sentence.getChildren().add(here);
    }
    Button remove = button("remove", number, () -> model.removeCondition(place));
    remove.setText(texts.get("button.remove"));
    remove.setAccessibleText(texts.get("button.removeCondition", number));
    sentence.getChildren().add(remove);
    sentence.getStyleClass().add("condition-row");
    return sentence;
  }

  private Node named(Slot<?> slot, Field field) {
    if (NAMELESS.contains(slot.key())) {
      return field.node();
    }
    Label name =
        new Label(
            slot.key().equals("condition.toUs")
                ? texts.get("condition.and")
                : context.words().label(slot.key()));
    name.getStyleClass().add("form-name");
    name.setLabelFor(field.focus());
    context.words().hint(slot.key()).ifPresent(hint -> name.setTooltip(new Tooltip(hint)));
    HBox both = new HBox(4, name, field.node());
    both.setAlignment(Pos.CENTER_LEFT);
    return both;
  }

  private static Button button(String key, String number, Runnable run) {
    Button button = new Button();
    button.setId("condition-" + number + "-" + key);
    button.getStyleClass().add("small-toggle");
    button.setOnAction(event -> run.run());
    return button;
  }
}
