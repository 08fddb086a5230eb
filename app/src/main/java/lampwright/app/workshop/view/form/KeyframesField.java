package lampwright.app.workshop.view.form;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.RowConstraints;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.edit.KeyframeSettings;
import lampwright.app.workshop.edit.Setting;
import lampwright.app.workshop.model.Slot;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Times;

/** Keyframes, a row each: time, level, colour, and how it goes on to the next. */
final class KeyframesField {
  /** More rows than anyone edits by hand; the file may have more, and keeps them. */
  private static final int MOST_ROWS = 200;

  private static final List<Setting<Keyframe, ?>> SETTINGS = KeyframeSettings.all();

  private final FormContext context;
  private final Slot<List<Keyframe>> slot;
  private final GridPane grid = new GridPane();
  private final List<Slot<?>> parts = new ArrayList<>();
  private int rows = -1;

  private KeyframesField(FormContext context, Slot<List<Keyframe>> slot) {
    this.context = context;
    this.slot = slot;
  }

  static Field of(FormContext context, Slot<List<Keyframe>> slot) {
    return new KeyframesField(context, slot).field();
  }

  private Field field() {
    grid.setHgap(12);
    grid.setVgap(6);
    // What is higher than a line, as a colour is, would have its neighbours in its middle.
    RowConstraints tops = new RowConstraints();
    tops.setValignment(VPos.TOP);
    tops.setFillHeight(false);
    grid.getRowConstraints().setAll(Collections.nCopies(MOST_ROWS + 1, tops));
    Button add = new Button(context.words().get("keyframe.add"));
    add.setId("keyframe-add");
    add.setOnAction(event -> add());
    slot.valueProperty().addListener((of, before, now) -> show());
    show();
    return new Field(new VBox(6, grid, PlainFields.trouble(slot), add), add);
  }

  private void show() {
    List<Keyframe> frames = slot.value();
    if (rows == Math.min(MOST_ROWS, frames.size())) {
      parts.forEach(Slot::refresh);
      return;
    }
    rows = Math.min(MOST_ROWS, frames.size());
    parts.clear();
    grid.getChildren().clear();
    for (int column = 0; column < SETTINGS.size(); column++) {
      grid.add(name(context.words().label(SETTINGS.get(column).key())), column + 1, 0);
    }
    for (int i = 0; i < rows; i++) {
      row(i);
    }
    if (frames.size() > rows) {
      grid.add(
          new Label(context.words().get("keyframe.more", Integer.toString(frames.size() - rows))),
          0,
          rows + 1,
          5,
          1);
    }
  }

  private void row(int i) {
    Words words = context.words();
    int line = i + 1;
    grid.add(name(Integer.toString(i + 1)), 0, line);
    for (int column = 0; column < SETTINGS.size(); column++) {
      grid.add(part(SETTINGS.get(column), i), column + 1, line);
    }
    Button remove = new Button(words.get("keyframe.remove"));
    remove.setAccessibleText(words.get("keyframe.remove.accessible", Integer.toString(i + 1)));
    remove.setDisable(slot.value().size() < 2);
    remove.setOnAction(
        event -> {
          List<Keyframe> fewer = new ArrayList<>(slot.value());
          fewer.remove(i);
          slot.set(fewer);
        });
    grid.add(remove, SETTINGS.size() + 1, line);
  }

  private static Label name(String text) {
    Label name = new Label(text);
    name.getStyleClass().add("form-name");
    return name;
  }

  private <V> javafx.scene.Node part(Setting<Keyframe, V> setting, int row) {
    Slot<V> part =
        new Slot<>(
            setting.key(),
            setting.kind(),
            setting.get().apply(slot.value().get(row)),
            () ->
                row < slot.value().size()
                    ? Optional.of(setting.get().apply(slot.value().get(row)))
                    : Optional.empty(),
            (value, gesture) -> {
              List<Keyframe> changed = new ArrayList<>(slot.value());
              try {
                changed.set(row, setting.set().apply(changed.get(row), value));
              } catch (lampwright.engine.check.InvalidModelException refused) {
                return Optional.of(String.valueOf(refused.getMessage()));
              }
              slot.set(changed, gesture);
              return slot.refusalProperty().get();
            });
    parts.add(part);
    return context.field(part).node();
  }

  private void add() {
    List<Keyframe> more = new ArrayList<>(slot.value());
    Keyframe last = more.get(more.size() - 1);
    BigDecimal step =
        more.size() > 1
            ? last.atMs().subtract(more.get(more.size() - 2).atMs())
            : BigDecimal.valueOf(500);
    BigDecimal at = last.atMs().add(step.max(BigDecimal.ONE)).min(BigDecimal.valueOf(Times.MAX_MS));
    more.add(new Keyframe(at, last.colour(), last.level(), Easing.LINEAR));
    slot.set(more);
  }
}
