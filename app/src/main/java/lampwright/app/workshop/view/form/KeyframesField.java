package lampwright.app.workshop.view.form;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.Slot;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Times;

/** Keyframes, a row each: time, level, colour, and how it goes on to the next. */
final class KeyframesField {
  /** More rows than anyone edits by hand; the file may have more, and keeps them. */
  private static final int MOST_ROWS = 200;

  private static final Kind<BigDecimal> TIME = Kind.Amount.of("ms", 0, Times.MAX_MS, 10);
  private static final Kind<BigDecimal> LEVEL = Kind.Amount.of("", 0, 1, 0.05);

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
    for (int i = 0; i < rows; i++) {
      row(i);
    }
    if (frames.size() > rows) {
      grid.add(
          new Label(context.words().get("keyframe.more", Integer.toString(frames.size() - rows))),
          0,
          rows,
          5,
          1);
    }
  }

  private void row(int i) {
    Words words = context.words();
    grid.add(new Label(Integer.toString(i + 1)), 0, i);
    grid.add(part("keyframe.atMs", TIME, i, Keyframe::atMs, KeyframesField::at), 1, i);
    grid.add(
        part(
            "keyframe.level",
            new Kind.Maybe<>(LEVEL, BigDecimal.ONE),
            i,
            k ->
                k.level().isPresent()
                    ? Optional.of(BigDecimal.valueOf(k.level().getAsDouble()))
                    : Optional.empty(),
            (k, level) ->
                new Keyframe(
                    k.atMs(),
                    k.colour(),
                    level
                        .map(l -> OptionalDouble.of(l.doubleValue()))
                        .orElse(OptionalDouble.empty()),
                    k.easing())),
        2,
        i);
    grid.add(
        part(
            "keyframe.colour",
            new Kind.Maybe<>(new Kind.Colours(), Colour.WHITE),
            i,
            Keyframe::colour,
            (k, colour) -> new Keyframe(k.atMs(), colour, k.level(), k.easing())),
        3,
        i);
    grid.add(
        part(
            "keyframe.easing",
            new Kind.Easings(),
            i,
            Keyframe::easing,
            (k, easing) -> new Keyframe(k.atMs(), k.colour(), k.level(), easing)),
        4,
        i);
    Button remove = new Button(words.get("keyframe.remove"));
    remove.setAccessibleText(words.get("keyframe.remove.accessible", Integer.toString(i + 1)));
    remove.setDisable(slot.value().size() < 2);
    remove.setOnAction(
        event -> {
          List<Keyframe> fewer = new ArrayList<>(slot.value());
          fewer.remove(i);
          slot.set(fewer);
        });
    grid.add(remove, 5, i);
  }

  private static Keyframe at(Keyframe k, BigDecimal atMs) {
    return new Keyframe(atMs, k.colour(), k.level(), k.easing());
  }

  private <V> javafx.scene.Node part(
      String key,
      Kind<V> kind,
      int row,
      Function<Keyframe, V> get,
      java.util.function.BiFunction<Keyframe, V, Keyframe> set) {
    Slot<V> part =
        new Slot<>(
            key,
            kind,
            get.apply(slot.value().get(row)),
            () ->
                row < slot.value().size()
                    ? Optional.of(get.apply(slot.value().get(row)))
                    : Optional.empty(),
            (value, gesture) -> {
              List<Keyframe> changed = new ArrayList<>(slot.value());
              try {
                changed.set(row, set.apply(changed.get(row), value));
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
