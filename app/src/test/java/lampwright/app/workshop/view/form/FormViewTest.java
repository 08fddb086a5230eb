package lampwright.app.workshop.view.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.VerticalDirection;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.GridPane;
import javafx.scene.shape.Circle;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.view.MouseHand;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Keyframe;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** Every kind of value, changed by hand. What is expected is what was typed. */
@ExtendWith(ApplicationExtension.class)
class FormViewTest {
  private static final Colour AMBER = new Colour.Signal(SignalColour.AMBER);

  private static final Map<String, String> KEYS =
      Map.of(
          "number", "startMs",
          "whole", "flashes",
          "flag", "clockwise",
          "text", "lamp.id",
          "choice", "blend",
          "maybe", "onMs",
          "easing", "span",
          "numbers", "angles",
          "keyframes", "kind");

  private final Map<String, Object> held = new HashMap<>();
  private final List<Object> gestures = new ArrayList<>();
  private final SimpleObjectProperty<Optional<Form>> shown =
      new SimpleObjectProperty<>(Optional.empty());
  private final List<Slot<?>> slots = new ArrayList<>();
  private FormView view;

  @Start
  void show(Stage stage) {
    Locale.setDefault(Locale.ROOT);
    slot("number", Kind.Amount.of("ms", 0, 1000, 10), BigDecimal.valueOf(100));
    slot("whole", new Kind.Whole("", 1, 8), 3L);
    slot("flag", new Kind.Flag(), false);
    slot("text", new Kind.Text(20), "left");
    slot("choice", new Kind.Choice<>("easing", List.of("linear", "hold"), word -> word), "linear");
    slot(
        "maybe",
        new Kind.Maybe<>(Kind.Amount.of("ms", 0, 1000, 10), BigDecimal.TEN),
        Optional.empty());
    slot("easing", new Kind.Easings(), Easing.LINEAR);
    slot(
        "numbers",
        new Kind.Numbers(Kind.Amount.of("degrees", 0, 360, 5), 4),
        List.of(BigDecimal.ZERO));
    slot("keyframes", new Kind.KeyframeRows(), List.of(keyframe(0), keyframe(400)));
    FormContext context =
        new FormContext()
            .with(Kind.Colours.class, (kind, slot) -> Field.of(new TextField("colour")));
    shown.set(Optional.of(new Form("one", "", List.of(new Form.Group("light", slots)))));
    view = new FormView(context, shown);
    stage.setScene(new Scene(view, 900, 700));
    stage.show();
  }

  /** Whatever a row has, it begins at one height, below the names of the columns. */
  @Test
  void valuesOfAKeyframeBeginAtOneHeight(FxRobot robot) {
    robot.interact(() -> view.layout());
    GridPane grid =
        (GridPane) robot.lookup("#field-kind").query().getParent().getChildrenUnmodifiable().get(0);
    for (int row = 0; row <= 2; row++) {
      int line = row;
      List<Node> cells =
          grid.getChildren().stream().filter(node -> GridPane.getRowIndex(node) == line).toList();
      assertThat(cells).hasSizeGreaterThanOrEqualTo(4);
      assertThat(cells.stream().map(node -> node.getBoundsInParent().getMinY()).distinct())
          .as("row %d", row)
          .hasSize(1);
    }
  }

  private <V> void slot(String name, Kind<V> kind, V first) {
    held.put(name, first);
    slots.add(
        new Slot<>(
            KEYS.get(name),
            kind,
            first,
            () -> Optional.of(cast(held.get(name))),
            (value, gesture) -> {
              if (value.equals("refused")) {
                return Optional.of("name: refused: must be another");
              }
              held.put(name, value);
              gesture.ifPresent(gestures::add);
              return Optional.empty();
            }));
  }

  private static Keyframe keyframe(long atMs) {
    return new Keyframe(
        BigDecimal.valueOf(atMs), Optional.of(AMBER), OptionalDouble.empty(), Easing.LINEAR);
  }

  // What was put under a name is of its kind.
  @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
  private static <V> V cast(Object value) {
    return (V) value;
  }

  private <N extends Node> N field(FxRobot robot, String name, Class<N> type) {
    return robot.lookup("#field-" + KEYS.get(name).replace('.', '-')).queryAs(type);
  }

  private TextField type(FxRobot robot, String name, String text) {
    TextField field = field(robot, name, TextField.class);
    robot.interact(
        () -> {
          field.requestFocus();
          field.setText(text);
        });
    return field;
  }

  @Test
  void typedNumberCountsWhileItIsInTheRange(FxRobot robot) {
    TextField field = type(robot, "number", "250.5");
    assertThat(held).containsEntry("number", new BigDecimal("250.5"));
    type(robot, "number", "1001");
    assertThat(held).containsEntry("number", new BigDecimal("250.5"));
    assertThat(robot.lookup(".field-trouble").queryAllAs(javafx.scene.control.Label.class))
        .anySatisfy(
            label -> assertThat(label.getText()).startsWith("! must be between 0 and 1000"));
    robot.interact(() -> view.focusFirst());
    type(robot, "number", "soon");
    assertThat(held).containsEntry("number", new BigDecimal("250.5"));
    assertThat(field.getAccessibleText()).contains("0 to 1000");
  }

  @Test
  void keysAndWheelStepANumberAndEscapeBringsItBack(FxRobot robot) {
    TextField field = field(robot, "number", TextField.class);
    robot.interact(field::requestFocus);
    robot.type(KeyCode.UP);
    assertThat((BigDecimal) held.get("number")).isEqualByComparingTo("110");
    robot.press(KeyCode.SHIFT).type(KeyCode.DOWN).release(KeyCode.SHIFT);
    assertThat((BigDecimal) held.get("number")).isEqualByComparingTo("10");
    robot.moveTo(field).scroll(VerticalDirection.UP);
    assertThat((BigDecimal) held.get("number")).isNotEqualByComparingTo("10");
    assertThat(gestures.stream().distinct()).as("one gesture, undone as one").hasSize(1);
    robot.type(KeyCode.ESCAPE);
    assertThat((BigDecimal) held.get("number")).isEqualByComparingTo("100");
    robot.type(KeyCode.DOWN, KeyCode.DOWN);
    robot.press(KeyCode.SHIFT).type(KeyCode.DOWN, KeyCode.DOWN).release(KeyCode.SHIFT);
    assertThat((BigDecimal) held.get("number")).as("never below its least").isZero();
  }

  @Test
  void wholeNumbersStayWhole(FxRobot robot) {
    type(robot, "whole", "4.6");
    assertThat(held).containsEntry("whole", 5L);
  }

  @Test
  void unitIsDragged(FxRobot robot) {
    Node unit = robot.lookup(".field-unit").queryAll().stream().findFirst().orElseThrow();
    // By the field's own rule, 4 pixels of the screen are a step of 10.
    robot.drag(unit).moveBy(41, 0).drop();
    assertThat((BigDecimal) held.get("number")).isEqualByComparingTo("200");
  }

  @Test
  void unitIsDraggedToWhereTheMouseLetsGo(FxRobot robot) {
    Node unit = robot.lookup(".field-unit").queryAll().stream().findFirst().orElseThrow();
    robot.interact(() -> new MouseHand(unit).press(2, 2).drag(12, 2).release(43, 2));
    assertThat((BigDecimal) held.get("number")).isEqualByComparingTo("200");
    robot.interact(() -> new MouseHand(unit).press(2, 2).release(2, 2));
    assertThat((BigDecimal) held.get("number")).isEqualByComparingTo("200");
  }

  @Test
  void textCountsWhenItIsEntered(FxRobot robot) {
    TextField field = type(robot, "text", "right");
    assertThat(held).containsEntry("text", "left");
    robot.type(KeyCode.ENTER);
    assertThat(held).containsEntry("text", "right");
    type(robot, "text", "refused");
    robot.type(KeyCode.ENTER);
    assertThat(field.getText()).isEqualTo("right");
    assertThat(robot.lookup("! name: refused: must be another").tryQuery()).isPresent();
    type(robot, "text", "half");
    robot.type(KeyCode.ESCAPE);
    assertThat(field.getText()).isEqualTo("right");
  }

  @Test
  void flagAndChoiceAreTaken(FxRobot robot) {
    CheckBox box = field(robot, "flag", CheckBox.class);
    robot.interact(box::fire);
    assertThat(held).containsEntry("flag", true);
    ComboBox<String> choice = cast(field(robot, "choice", ComboBox.class));
    robot.interact(() -> choice.setValue("hold"));
    assertThat(held).containsEntry("choice", "hold");
  }

  @Test
  void whatMayBeLeftOutHasItsFieldWhenItIsSet(FxRobot robot) {
    CheckBox box = field(robot, "maybe", CheckBox.class);
    int before = robot.lookup(".text-field").queryAll().size();
    robot.interact(box::fire);
    assertThat(held).containsEntry("maybe", Optional.of(BigDecimal.TEN));
    assertThat(robot.lookup(".text-field").queryAll()).hasSize(before + 1);
    robot.interact(box::fire);
    assertThat(held).containsEntry("maybe", Optional.empty());
    assertThat(robot.lookup(".text-field").queryAll()).hasSize(before);
  }

  @Test
  void easingIsChosenByNameOrTypedAsACurve(FxRobot robot) {
    ComboBox<String> box = cast(field(robot, "easing", ComboBox.class));
    robot.interact(() -> box.setValue("cubic-bezier"));
    assertThat(held.get("easing")).isInstanceOf(Easing.CubicBezier.class);
    robot.interact(() -> box.setValue("hold"));
    assertThat(held).containsEntry("easing", new Easing.Hold());
  }

  /** Each handle is a point of the curve; the one let go on the other has its numbers. */
  @Test
  void handlesOfACurveAreDraggedToWhereTheMouseLetsGo(FxRobot robot) {
    ComboBox<String> box = cast(field(robot, "easing", ComboBox.class));
    robot.interact(() -> box.setValue("cubic-bezier"));
    Easing.CubicBezier before = cast(held.get("easing"));
    List<Circle> handles = List.copyOf(robot.lookup(".easing-handle").<Circle>queryAll());
    double x = handles.get(1).getCenterX();
    double y = handles.get(1).getCenterY();
    MouseHand hand = new MouseHand(handles.get(0));
    robot.interact(
        () -> {
          hand.press(handles.get(0).getCenterX(), handles.get(0).getCenterY());
          hand.drag(x - 9, y + 7).release(x, y);
        });
    assertThat(held)
        .containsEntry(
            "easing", new Easing.CubicBezier(before.x2(), before.y2(), before.x2(), before.y2()));
    assertThat(gestures.stream().distinct()).hasSize(1);
  }

  @Test
  void keyframesAreAddedAfterTheLastAtTheSameStepAndRemoved(FxRobot robot) {
    robot.interact(() -> robot.lookup("#field-kind").queryButton().fire());
    List<Keyframe> frames = cast(held.get("keyframes"));
    assertThat(frames).extracting(k -> k.atMs().intValueExact()).containsExactly(0, 400, 800);
  }

  @Test
  void formOfTheSameStructureKeepsItsFieldsAndAnotherIsBuiltAnew(FxRobot robot) {
    TextField field = field(robot, "number", TextField.class);
    held.put("number", BigDecimal.valueOf(777));
    robot.interact(() -> shown.get().orElseThrow().refresh());
    assertThat(field.getText()).isEqualTo("777");
    robot.interact(
        () ->
            shown.set(
                Optional.of(
                    new Form("one", "", List.of(new Form.Group("light", List.copyOf(slots)))))));
    assertThat(field(robot, "number", TextField.class)).isSameAs(field);
    robot.interact(() -> shown.set(Optional.of(new Form("two", "", List.of()))));
    assertThat(robot.lookup(".form-name").tryQuery()).isEmpty();
  }
}
