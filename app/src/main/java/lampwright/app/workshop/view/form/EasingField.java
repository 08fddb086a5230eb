package lampwright.app.workshop.view.form;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.Slot;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.pattern.Easing;

/** An easing: by name, or as a curve whose two handles are dragged or typed. */
final class EasingField {
  private static final double SIDE = 64;
  private static final double ROOM = 10;
  private static final Easing.CubicBezier FIRST = new Easing.CubicBezier(0.42, 0, 0.58, 1);
  private static final List<String> NAMES = List.of("linear", "smooth", "hold", "cubic-bezier");

  private final Words words;
  private final Slot<Easing> slot;
  private final TextField numbers = new TextField();
  private final Polyline curve = new Polyline();
  private final Circle one = new Circle(5);
  private final Circle two = new Circle(5);
  private final Line toOne = new Line();
  private final Line toTwo = new Line();
  private final VBox bezier = new VBox(4);
  private Object gesture = new Object();

  private EasingField(Words words, Slot<Easing> slot) {
    this.words = words;
    this.slot = slot;
  }

  static Field of(Words words, Slot<Easing> slot) {
    return new EasingField(words, slot).field();
  }

  private Field field() {
    ComboBox<String> box = PlainFields.choiceBox(NAMES, name -> words.choice("easing", name));
    box.setAccessibleText(words.label(slot.key()));
    Pane drawing = new Pane(curve, toOne, toTwo, one, two);
    drawing.getStyleClass().add("easing-curve");
    drawing.setMinSize(SIDE + 2 * ROOM, SIDE + 2 * ROOM);
    drawing.setMaxSize(SIDE + 2 * ROOM, SIDE + 2 * ROOM);
    numbers.setPrefColumnCount(14);
    numbers.setAccessibleText(words.get("easing.numbers"));
    bezier.getChildren().setAll(drawing, numbers);
    HBox all = new HBox(8, box, bezier);
    all.setAlignment(Pos.TOP_LEFT);
    box.setOnAction(
        event -> {
          String name = box.getValue();
          if (name != null && !name.equals(name(slot.value()))) {
            slot.set(byName(name));
          }
        });
    Entered.listen(numbers, this::typed);
    drag(one, true);
    drag(two, false);
    Runnable show =
        () -> {
          box.setValue(name(slot.value()));
          boolean drawn = slot.value() instanceof Easing.CubicBezier;
          bezier.setVisible(drawn);
          bezier.setManaged(drawn);
          if (slot.value() instanceof Easing.CubicBezier b) {
            show(b);
          }
        };
    slot.valueProperty().addListener((of, before, now) -> show.run());
    show.run();
    return new Field(all, box);
  }

  private void drag(Circle handle, boolean first) {
    handle.getStyleClass().add("easing-handle");
    handle.setOnMousePressed(event -> gesture = new Object());
    handle.setOnMouseDragged(event -> dragged(handle, first, event));
    handle.setOnMouseReleased(
        event -> {
          // A fast hand lets go where no drag was told of before.
          if (!event.isStillSincePress()) {
            dragged(handle, first, event);
          }
        });
  }

  private void dragged(Circle handle, boolean first, MouseEvent event) {
    Point2D at = handle.getParent().sceneToLocal(event.getSceneX(), event.getSceneY());
    double x = hundredths(Math.max(0, Math.min(1, (at.getX() - ROOM) / SIDE)));
    double y = hundredths(Math.max(-10, Math.min(10, 1 - (at.getY() - ROOM) / SIDE)));
    if (slot.value() instanceof Easing.CubicBezier b) {
      slot.set(
          first
              ? new Easing.CubicBezier(x, y, b.x2(), b.y2())
              : new Easing.CubicBezier(b.x1(), b.y1(), x, y),
          Optional.of(gesture));
    }
  }

  private void typed() {
    if (!(slot.value() instanceof Easing.CubicBezier now)) {
      return;
    }
    List<Double> typed =
        java.util.Arrays.stream(numbers.getText().strip().split("[\\s;]+"))
            .flatMap(word -> NumberText.parse(word).stream())
            .map(BigDecimal::doubleValue)
            .toList();
    if (typed.size() == 4) {
      try {
        Easing wanted =
            new Easing.CubicBezier(typed.get(0), typed.get(1), typed.get(2), typed.get(3));
        if (!wanted.equals(now)) {
          slot.set(wanted);
        }
      } catch (InvalidModelException outside) {
        // The field goes back to what is.
      }
    }
    if (slot.value() instanceof Easing.CubicBezier b) {
      show(b);
    }
  }

  private void show(Easing.CubicBezier b) {
    numbers.setText(
        String.join(
            " ",
            List.of(b.x1(), b.y1(), b.x2(), b.y2()).stream()
                .map(v -> NumberText.of(BigDecimal.valueOf(v)))
                .toList()));
    curve.getPoints().clear();
    for (int i = 0; i <= 32; i++) {
      curve.getPoints().addAll(x(i / 32.0), y(b.ease(i / 32.0)));
    }
    one.setCenterX(x(b.x1()));
    one.setCenterY(y(b.y1()));
    two.setCenterX(x(b.x2()));
    two.setCenterY(y(b.y2()));
    line(toOne, 0, 0, b.x1(), b.y1());
    line(toTwo, 1, 1, b.x2(), b.y2());
  }

  private static void line(Line line, double x1, double y1, double x2, double y2) {
    line.getStyleClass().setAll("easing-lever");
    line.setStartX(x(x1));
    line.setStartY(y(y1));
    line.setEndX(x(x2));
    line.setEndY(y(y2));
  }

  private static double x(double share) {
    return ROOM + share * SIDE;
  }

  private static double y(double share) {
    return ROOM + (1 - share) * SIDE;
  }

  private static double hundredths(double value) {
    return Math.round(value * 100) / 100.0;
  }

  private static String name(Easing easing) {
    return easing instanceof Easing.CubicBezier ? "cubic-bezier" : easing.text();
  }

  private static Easing byName(String name) {
    return switch (name) {
      case "smooth" -> new Easing.Smooth();
      case "hold" -> new Easing.Hold();
      case "cubic-bezier" -> FIRST;
      default -> Easing.LINEAR;
    };
  }
}
