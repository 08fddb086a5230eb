package lampwright.app.workshop.view.cue;

import java.util.function.UnaryOperator;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Tooltip;
import javafx.scene.image.ImageView;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Circle;
import lampwright.app.workshop.model.cue.ColourReach;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.words.ColourWords;

/**
 * A field of hues and saturations in the light that the lamp makes of them; what its emitters can't
 * mix is hatched. A click or drag, or the arrow keys, choose from it.
 */
final class ReachField {
  private static final int CELL = 3;
  private static final int HATCH = 4;
  private static final int OPAQUE_BLACK = 0xFF000000;
  private static final double HUE_STEP = 5;
  private static final double SATURATION_STEP = 0.05;

  private final Pane pane = new Pane();
  private final Circle mark = new Circle(5);
  private final ColourSliders sliders;
  private final UnaryOperator<Colour> form;
  private Colour.Hue now = new Colour.Hue(0, 1);

  /**
   * @param form makes a colour of the form that is edited
   */
  ReachField(ColourReach reach, ColourSliders sliders, UnaryOperator<Colour> form) {
    this.sliders = sliders;
    this.form = form;
    Texts texts = Texts.of("cue");
    pane.setId("colour-reach");
    pane.getStyleClass().add("colour-reach");
    pane.setFocusTraversable(true);
    pane.setAccessibleRole(AccessibleRole.SLIDER);
    pane.setMaxSize(Pane.USE_PREF_SIZE, Pane.USE_PREF_SIZE);
    mark.getStyleClass().add("colour-mark");
    mark.setMouseTransparent(true);
    pane.getChildren().setAll(new ImageView(image(reach)), mark);
    Tooltip.install(pane, new Tooltip(texts.get("reach.tooltip")));
    pane.setOnMousePressed(
        event -> {
          pane.requestFocus();
          sliders.newGesture();
          choose(event);
          // The form around it would take the focus, and the arrow keys with it.
          event.consume();
        });
    pane.setOnMouseDragged(this::choose);
    // A fast hand lets go where no drag was told of before.
    pane.setOnMouseReleased(this::choose);
    pane.addEventHandler(KeyEvent.KEY_PRESSED, this::key);
  }

  Pane node() {
    return pane;
  }

  void show(Colour colour) {
    if (colour instanceof Colour.Hue hue) {
      now = hue;
    }
    mark.setCenterX(CELL * ColourReach.HUES * now.degrees() / 360);
    mark.setCenterY(CELL * ColourReach.STEPS * (1 - now.saturation()));
    pane.setAccessibleText(Texts.of("cue").get("reach.accessible", ColourWords.of(now)));
  }

  private void choose(MouseEvent event) {
    Colour at =
        ColourReach.at(
            event.getX() / (CELL * ColourReach.HUES), event.getY() / (CELL * ColourReach.STEPS));
    sliders.set(form.apply(at));
  }

  private void key(KeyEvent event) {
    double by = event.isShiftDown() ? 1 : HUE_STEP;
    double share = event.isShiftDown() ? 0.01 : SATURATION_STEP;
    switch (event.getCode()) {
      case LEFT -> turn(-by, 0);
      case RIGHT -> turn(by, 0);
      case UP -> turn(0, share);
      case DOWN -> turn(0, -share);
      default -> {
        return;
      }
    }
    event.consume();
  }

  private void turn(double degrees, double saturation) {
    double turned = (now.degrees() + degrees + 360) % 360;
    double share = Math.max(0, Math.min(1, now.saturation() + saturation));
    now = new Colour.Hue(turned, Math.round(100 * share) / 100.0);
    sliders.set(form.apply(now));
  }

  private static WritableImage image(ColourReach reach) {
    WritableImage image = new WritableImage(CELL * ColourReach.HUES, CELL * ColourReach.STEPS);
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        boolean hatched = !reach.reached(x / CELL, y / CELL) && (x + y) % HATCH == 0;
        image
            .getPixelWriter()
            .setArgb(x, y, hatched ? OPAQUE_BLACK : reach.argb(x / CELL, y / CELL));
      }
    }
    return image;
  }
}
