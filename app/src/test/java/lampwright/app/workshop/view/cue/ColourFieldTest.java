package lampwright.app.workshop.view.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.ColourDropper;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.view.MouseHand;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.app.workshop.view.form.FormView;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.SignalColour;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Every form of a colour, changed by hand: each control changes its own part of the colour. */
@ExtendWith(ApplicationExtension.class)
class ColourFieldTest {
  private final List<Colour> sets = new ArrayList<>();
  private final List<Optional<Object>> gestures = new ArrayList<>();
  private final SimpleObjectProperty<List<Colour>> used = new SimpleObjectProperty<>(List.of());
  private final ColourDropper dropper = new ColourDropper();
  private Colour held = new Colour.Srgb(1, 2, 3);
  private final Slot<Colour> slot =
      new Slot<>(
          "colour",
          new Kind.Colours(),
          held,
          () -> Optional.of(held),
          (colour, gesture) -> {
            held = colour;
            sets.add(colour);
            gestures.add(gesture);
            return Optional.empty();
          });

  /** Of a lamp whose colours are matched to its emitters. */
  private static PixelLook look() {
    Project project = Projects4Tests.small();
    Rig rig = Rig.COLOUR_MATCHING.with(project.rig(), ColourMatching.EMITTERS);
    return PixelLook.of(rig, rig.lamp("roof").orElseThrow());
  }

  @Start
  void show(Stage stage) {
    FormContext context = new FormContext();
    PixelLook look = look();
    ColourFields.addTo(context, new ColourContext(() -> Optional.of(look), used, dropper));
    Form form = new Form("one", "", List.of(new Form.Group("light", List.of(slot))));
    stage.setScene(
        new Scene(new FormView(context, new SimpleObjectProperty<>(Optional.of(form))), 600, 500));
    stage.show();
  }

  private void shown(FxRobot robot, Colour colour) {
    robot.interact(
        () -> {
          held = colour;
          slot.refresh();
        });
    sets.clear();
    gestures.clear();
  }

  private Colour slid(FxRobot robot, String slider, double to) {
    Slider found = robot.lookup("#slider-" + slider).queryAs(Slider.class);
    robot.interact(() -> found.setValue(to));
    return held;
  }

  private static TextField text(FxRobot robot) {
    return robot.lookup(".text-field").queryAll().stream()
        .filter(TextField.class::isInstance)
        .map(TextField.class::cast)
        .findFirst()
        .orElseThrow();
  }

  private static void enter(FxRobot robot, String words) {
    TextField field = text(robot);
    robot.interact(
        () -> {
          field.requestFocus();
          field.setText(words);
        });
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
  }

  @Test
  void eachSliderIsItsPartOfRgb(FxRobot robot) {
    assertThat(slid(robot, "srgb-red", 10)).isEqualTo(new Colour.Srgb(10, 2, 3));
    assertThat(slid(robot, "srgb-green", 20)).isEqualTo(new Colour.Srgb(10, 20, 3));
    assertThat(slid(robot, "srgb-blue", 255)).isEqualTo(new Colour.Srgb(10, 20, 255));
    assertThat(text(robot).getText()).isEqualTo("#0A14FF");
  }

  @Test
  void typedCodeIsTakenWithOrWithoutItsSign(FxRobot robot) {
    enter(robot, "#ffa000");
    assertThat(held).isEqualTo(new Colour.Srgb(255, 160, 0));
    enter(robot, "0a0B0c");
    assertThat(held).isEqualTo(new Colour.Srgb(10, 11, 12));
    enter(robot, "#12345");
    assertThat(held).isEqualTo(new Colour.Srgb(10, 11, 12));
    assertThat(text(robot).getText()).isEqualTo("#0A0B0C");
  }

  @Test
  void eachSliderIsItsEmitter(FxRobot robot) {
    shown(robot, new Colour.Drive(0.1, 0.2, 0.3, 0.4));
    assertThat(slid(robot, "drive-r", 0.5)).isEqualTo(new Colour.Drive(0.5, 0.2, 0.3, 0.4));
    assertThat(slid(robot, "drive-g", 0.6)).isEqualTo(new Colour.Drive(0.5, 0.6, 0.3, 0.4));
    assertThat(slid(robot, "drive-b", 0.7)).isEqualTo(new Colour.Drive(0.5, 0.6, 0.7, 0.4));
    assertThat(slid(robot, "drive-w", 1)).isEqualTo(new Colour.Drive(0.5, 0.6, 0.7, 1));
  }

  @Test
  void hueAndSaturationAreSlid(FxRobot robot) {
    shown(robot, new Colour.Hue(30, 1));
    assertThat(slid(robot, "hue-degrees", 210.4)).isEqualTo(new Colour.Hue(210, 1));
    assertThat(slid(robot, "hue-saturation", 0.254)).isEqualTo(new Colour.Hue(210, 0.25));
  }

  /** Evenly in mired: a million over 250 is 4,000 K. */
  @Test
  void whiteIsTypedOrSlid(FxRobot robot) {
    shown(robot, new Colour.Kelvin(3000));
    enter(robot, "4500");
    assertThat(held).isEqualTo(new Colour.Kelvin(4500));
    enter(robot, "500");
    assertThat(held).as("below the range").isEqualTo(new Colour.Kelvin(4500));
    Slider mired = robot.lookup(".slider").queryAs(Slider.class);
    robot.interact(() -> mired.setValue(250));
    assertThat(held).isEqualTo(new Colour.Kelvin(4000));
    assertThat(text(robot).getText()).isEqualTo("4000");
  }

  @Test
  void signalColourIsChosenByName(FxRobot robot) {
    shown(robot, new Colour.Signal(SignalColour.AMBER));
    ComboBox<?> names =
        robot.lookup(".combo-box").queryAll().stream()
            .map(node -> (ComboBox<?>) node)
            .filter(box -> box.getValue() instanceof SignalColour)
            .findFirst()
            .orElseThrow();
    assertThat(names.getItems()).hasSize(SignalColour.values().length);
    int blue = names.getItems().indexOf(SignalColour.BLUE);
    robot.interact(() -> names.getSelectionModel().clearAndSelect(blue));
    assertThat(held).isEqualTo(new Colour.Signal(SignalColour.BLUE));
  }

  @Test
  void anotherFormHasItsOwnControls(FxRobot robot) {
    ComboBox<ColourForm> forms = robot.lookup("#field-colour").queryComboBox();
    for (ColourForm form : ColourForm.values()) {
      robot.interact(() -> forms.setValue(form));
      assertThat(ColourForm.of(held)).isEqualTo(form);
      assertThat(robot.lookup("#slider-srgb-red").tryQuery().isPresent())
          .isEqualTo(form == ColourForm.SRGB);
      assertThat(robot.lookup("#slider-drive-r").tryQuery().isPresent())
          .isEqualTo(form == ColourForm.DRIVE);
    }
  }

  @Test
  void colourThatIsOnlyShownIsNotSetAgain(FxRobot robot) {
    for (Colour colour :
        List.of(
            new Colour.Srgb(200, 100, 50),
            new Colour.Srgb(50, 100, 200),
            new Colour.Hue(33, 0.123456),
            new Colour.Kelvin(3333),
            new Colour.Signal(SignalColour.GREEN),
            new Colour.Drive(0.00012, 1, 0, 0.5))) {
      shown(robot, colour);
      WaitForAsyncUtils.waitForFxEvents();
      assertThat(sets).as(colour.toString()).isEmpty();
      assertThat(held).isEqualTo(colour);
    }
  }

  @Test
  void stepsOfOneDragAreOneGesture(FxRobot robot) {
    Slider red = robot.lookup("#slider-srgb-red").queryAs(Slider.class);
    MouseHand hand = new MouseHand(red);
    robot.interact(
        () -> {
          hand.press(20, 5);
          red.setValue(90);
          red.setValue(91);
          hand.release(20, 5).press(40, 5);
          red.setValue(120);
          hand.release(40, 5);
        });
    assertThat(gestures).hasSizeGreaterThanOrEqualTo(3).doesNotContain(Optional.empty());
    Object last = gestures.get(gestures.size() - 1);
    assertThat(gestures.get(0)).isEqualTo(gestures.get(1)).isNotEqualTo(last);
  }

  /** Half its width is half a turn; a quarter down, three quarters of the saturation are left. */
  @Test
  void fieldOfHuesIsPressedDraggedAndLetGo(FxRobot robot) {
    shown(robot, new Colour.Hue(0, 1));
    Node field = robot.lookup("#colour-reach").query();
    // The mark reaches over the edges.
    Bounds hues = field.lookup("ImageView").getBoundsInParent();
    double width = hues.getWidth();
    double height = hues.getHeight();
    robot.interact(
        () ->
            new MouseHand(field)
                .press(width / 4, height / 2)
                .drag(width / 3, height / 2)
                .moved()
                .release(width / 2, height / 4));
    assertThat(held).isEqualTo(new Colour.Hue(180, 0.75));
    assertThat(gestures.stream().distinct()).hasSize(1);
    robot.type(KeyCode.RIGHT);
    assertThat(held).isEqualTo(new Colour.Hue(185, 0.75));
  }

  @Test
  void coloursOfTheProjectAreBesideItAndFollowIt(FxRobot robot) {
    robot.interact(() -> used.set(List.of(new Colour.Srgb(9, 8, 7), new Colour.Kelvin(2500))));
    Button second = robot.lookup("#palette-1").queryButton();
    robot.interact(second::fire);
    assertThat(held).isEqualTo(new Colour.Kelvin(2500));
    robot.interact(() -> robot.lookup("#palette-0").queryButton().requestFocus());
    robot.type(KeyCode.RIGHT, KeyCode.RIGHT, KeyCode.LEFT);
    assertThat(robot.lookup("#palette-1").query().isFocused()).isTrue();
  }

  @Test
  void dropperTakesOneColourAndEscapeNone(FxRobot robot) {
    ToggleButton button = robot.lookup(".colour-dropper").queryAs(ToggleButton.class);
    robot.interact(button::fire);
    assertThat(dropper.isActive()).isTrue();
    robot.interact(() -> dropper.give(Optional.of(new Colour.Kelvin(2700))));
    assertThat(held).isEqualTo(new Colour.Kelvin(2700));
    assertThat(button.isSelected()).isFalse();
    robot.interact(
        () -> {
          button.fire();
          button.requestFocus();
        });
    robot.type(KeyCode.ESCAPE);
    assertThat(dropper.isActive()).isFalse();
    assertThat(button.isSelected()).isFalse();
  }
}
