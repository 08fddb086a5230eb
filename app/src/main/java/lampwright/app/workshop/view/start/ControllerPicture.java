package lampwright.app.workshop.view.start;

import java.util.Locale;
import java.util.Map;
import javafx.scene.layout.Pane;
import javafx.scene.shape.SVGPath;
import lampwright.engine.rig.Controller;

/** A small drawing of a controller's package, seen from above. */
final class ControllerPicture extends Pane {
  /**
   * A package as it is drawn.
   *
   * @param width of its body
   * @param height of its body
   * @param pins of each long side
   * @param sides whether the short sides have pins too
   * @param board whether it is a board with a chip on it
   */
  private record Form(double width, double height, int pins, boolean sides, boolean board) {}

  private static final double WIDTH = 54;
  private static final double HEIGHT = 34;
  private static final double PIN = 4;

  /** As they are sold to builders: DIP-28, TQFP-44, DIP-8. */
  private static final Map<String, Form> FORMS =
      Map.of(
          "atmega328p", new Form(50, 16, 14, false, false),
          "atmega32u4", new Form(26, 26, 7, true, false),
          "attiny85", new Form(18, 16, 4, false, false));

  /** What the others are on. */
  private static final Form BOARD = new Form(50, 22, 12, false, true);

  private static final String ANY = "other";

  ControllerPicture(Controller controller) {
    setMinSize(WIDTH, HEIGHT);
    setPrefSize(WIDTH, HEIGHT);
    setMaxSize(WIDTH, HEIGHT);
    if (controller.id().equals(ANY)) {
      // Whatever it is: its program is the builder's.
      getChildren().add(path("chip-pins", "M18 8 L8 17 L18 26 M36 8 L46 17 L36 26 M31 6 L23 28"));
    } else {
      draw(FORMS.getOrDefault(controller.id(), BOARD));
    }
  }

  private void draw(Form form) {
    double left = (WIDTH - form.width()) / 2;
    double top = (HEIGHT - form.height()) / 2;
    StringBuilder pins = new StringBuilder();
    for (int k = 0; k < form.pins(); k++) {
      double share = (k + 0.5) / form.pins();
      double x = left + share * form.width();
      line(pins, x, top - PIN, x, top + form.height() + PIN);
      if (form.sides()) {
        double y = top + share * form.height();
        line(pins, left - PIN, y, left + form.width() + PIN, y);
      }
    }
    getChildren().add(path("chip-pins", pins.toString()));
    String body = form.board() ? "chip-board" : "chip-body";
    getChildren().add(path(body, box(left, top, form.width(), form.height())));
    if (form.board()) {
      getChildren().add(path("chip-body", box(WIDTH / 2 - 5, HEIGHT / 2 - 5, 10, 10)));
      getChildren().add(path("chip-board", box(left - 2, HEIGHT / 2 - 4, 8, 8)));
    } else {
      // The mark of the first pin.
      getChildren().add(path("chip-mark", box(left + 3, top + form.height() - 5, 2, 2)));
    }
  }

  private static void line(StringBuilder to, double x1, double y1, double x2, double y2) {
    to.append(String.format(Locale.ROOT, "M%.2f %.2f L%.2f %.2f ", x1, y1, x2, y2));
  }

  private static String box(double x, double y, double width, double height) {
    return String.format(
        Locale.ROOT, "M%.2f %.2f h%.2f v%.2f h%.2f Z", x, y, width, height, -width);
  }

  private static SVGPath path(String style, String content) {
    SVGPath path = new SVGPath();
    path.setContent(content);
    path.getStyleClass().add(style);
    return path;
  }
}
