package lampwright.app.workshop.view.form;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.HBox;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.Slot;

/**
 * A number: typed, stepped by Up and Down or the wheel, or dragged on its unit. Typed text counts
 * as it is entered while it is a number within the range; Escape brings the old one back.
 */
final class NumberField<V> {
  private static final double PIXELS_PER_STEP = 4;

  private final Slot<V> slot;
  private final Function<BigDecimal, V> toValue;
  private final Function<V, BigDecimal> toNumber;
  private final BigDecimal min;
  private final BigDecimal max;
  private final BigDecimal step;
  private final String range;
  private final String wrong;
  private final TextField text = new TextField();
  private final Label trouble = new Label();
  private Object gesture = new Object();
  private V before;
  private boolean shows;
  private double dragX;
  private BigDecimal dragFrom = BigDecimal.ZERO;

  private NumberField(
      Words words,
      Slot<V> slot,
      Function<BigDecimal, V> toValue,
      Function<V, BigDecimal> toNumber,
      Kind.Amount kind) {
    this.slot = slot;
    this.toValue = toValue;
    this.toNumber = toNumber;
    this.min = kind.min();
    this.max = kind.max();
    this.step = kind.step();
    this.range = words.range(kind);
    this.wrong = words.outOfRange(kind);
    this.before = slot.value();
    text.setPrefColumnCount(7);
    text.setAccessibleText(words.label(slot.key()) + ", " + range);
    trouble.getStyleClass().add("field-trouble");
    trouble.setManaged(false);
    trouble.setVisible(false);
    trouble.setWrapText(true);
  }

  static Field ofAmount(Words words, Kind.Amount kind, Slot<BigDecimal> slot) {
    return new NumberField<>(words, slot, v -> v, v -> v, kind).field(words.unit(kind.unit()));
  }

  static Field ofWhole(Words words, Kind.Whole kind, Slot<Long> slot) {
    Kind.Amount amount =
        new Kind.Amount(
            kind.unit(),
            BigDecimal.valueOf(kind.min()),
            BigDecimal.valueOf(kind.max()),
            BigDecimal.ONE);
    return new NumberField<>(
            words,
            slot,
            v -> v.setScale(0, java.math.RoundingMode.HALF_UP).longValue(),
            BigDecimal::valueOf,
            amount)
        .field(words.unit(kind.unit()));
  }

  private Field field(String unitText) {
    Label unit = new Label(unitText.isEmpty() ? "↔" : unitText);
    unit.getStyleClass().add("field-unit");
    Tooltip allowed = new Tooltip(range);
    text.setTooltip(allowed);
    unit.setTooltip(allowed);
    show();
    slot.valueProperty().addListener((of, was, now) -> showUnlessTyped());
    text.textProperty().addListener((of, was, now) -> typed());
    text.focusedProperty().addListener((of, was, now) -> focus(now));
    text.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    text.addEventHandler(ScrollEvent.SCROLL, this::wheel);
    unit.setOnMousePressed(
        event -> {
          dragX = event.getScreenX();
          dragFrom = toNumber.apply(slot.value());
          gesture = new Object();
        });
    unit.setOnMouseDragged(this::dragged);
    unit.setOnMouseReleased(
        event -> {
          // A fast hand lets go where no drag was told of before.
          if (!event.isStillSincePress()) {
            dragged(event);
          }
          gesture = new Object();
        });
    HBox line = new HBox(6, text, unit);
    line.setAlignment(Pos.CENTER_LEFT);
    HBox all = new HBox(6, line, trouble);
    all.setAlignment(Pos.CENTER_LEFT);
    return new Field(all, text);
  }

  private void dragged(MouseEvent event) {
    long steps = Math.round((event.getScreenX() - dragX) / PIXELS_PER_STEP);
    set(dragFrom.add(step.multiply(BigDecimal.valueOf(steps))));
  }

  private void focus(boolean now) {
    before = slot.value();
    gesture = new Object();
    if (!now) {
      show();
    }
  }

  private void key(KeyEvent event) {
    int by = event.isShiftDown() ? 10 : 1;
    if (event.getCode() == KeyCode.UP) {
      stepBy(by);
      event.consume();
    } else if (event.getCode() == KeyCode.DOWN) {
      stepBy(-by);
      event.consume();
    } else if (event.getCode() == KeyCode.ENTER) {
      show();
      text.selectAll();
    } else if (event.getCode() == KeyCode.ESCAPE && !slot.value().equals(before)) {
      slot.set(before, Optional.of(gesture));
      show();
      event.consume();
    }
  }

  private void wheel(ScrollEvent event) {
    if (text.isFocused() && event.getDeltaY() != 0) {
      stepBy(event.getDeltaY() > 0 ? 1 : -1);
      event.consume();
    }
  }

  private void stepBy(int steps) {
    set(toNumber.apply(slot.value()).add(step.multiply(BigDecimal.valueOf(steps))));
    show();
  }

  private void set(BigDecimal wanted) {
    slot.set(toValue.apply(wanted.max(min).min(max)), Optional.of(gesture));
  }

  private void typed() {
    if (shows) {
      return;
    }
    Optional<BigDecimal> number = NumberText.parse(text.getText());
    boolean good = number.filter(n -> n.compareTo(min) >= 0 && n.compareTo(max) <= 0).isPresent();
    if (good && slot.set(toValue.apply(number.get()), Optional.of(gesture))) {
      trouble("");
    } else {
      trouble(good ? slot.refusalProperty().get().orElse("") : "! " + wrong);
    }
  }

  private void showUnlessTyped() {
    boolean same =
        NumberText.parse(text.getText())
            .filter(n -> n.compareTo(toNumber.apply(slot.value())) == 0)
            .isPresent();
    if (!same) {
      show();
    }
  }

  private void show() {
    shows = true;
    text.setText(NumberText.of(toNumber.apply(slot.value())));
    shows = false;
    trouble("");
  }

  private void trouble(String words) {
    trouble.setText(words);
    trouble.setVisible(!words.isEmpty());
    trouble.setManaged(!words.isEmpty());
    text.pseudoClassStateChanged(javafx.css.PseudoClass.getPseudoClass("wrong"), !words.isEmpty());
  }
}
