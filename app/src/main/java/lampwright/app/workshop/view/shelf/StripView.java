package lampwright.app.workshop.view.shelf;

import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;
import lampwright.app.workshop.model.shelf.ShelfLight;

/**
 * The strip of a pattern: its light over time as it stands and, where it may move, the eight pixels
 * of one instant at the left and a line at that instant.
 */
final class StripView extends Region {
  private static final double CELL = 16;
  private static final double GAP = 4;
  private static final double SCREEN_SCALE = 2;

  private final boolean wide;
  private final Canvas chart = new Canvas();
  private final Canvas cell = new Canvas();
  private final Rectangle line = new Rectangle(1, 1);
  private Optional<ShelfLight> light = Optional.empty();
  private int shown = -1;

  /**
   * @param wide whether it has a cell that moves from the start
   */
  StripView(boolean wide, double width, double height) {
    this.wide = wide;
    getStyleClass().add("shelf-strip");
    setMinSize(width, height);
    setPrefSize(width, height);
    setMaxSize(wide ? Double.MAX_VALUE : width, height);
    setMouseTransparent(true);
    line.getStyleClass().add("shelf-now");
    line.setVisible(false);
    for (var part : new javafx.scene.Node[] {chart, cell, line}) {
      part.setManaged(false);
    }
    getChildren().setAll(chart, cell, line);
  }

  /** Shows a light, once it is there. */
  void show(Optional<ShelfLight> wanted) {
    if (!light.equals(wanted)) {
      light = wanted;
      shown = -1;
      requestLayout();
    }
  }

  /** Shows an instant; below 0 none. */
  void frame(int frame) {
    if (frame == shown || light.isEmpty()) {
      return;
    }
    shown = frame;
    boolean moves = frame >= 0;
    line.setVisible(moves);
    if (moves) {
      line.setX(chart.getLayoutX() + chart.getWidth() * frame / ShelfLight.FRAMES);
    }
    if (wide) {
      paintCell(Math.max(0, frame), moves);
    }
  }

  private void paintCell(int frame, boolean moves) {
    GraphicsContext g = cell.getGraphicsContext2D();
    g.clearRect(0, 0, cell.getWidth(), cell.getHeight());
    double pixel = cell.getHeight() / ShelfLight.PIXELS;
    for (int k = 0; k < ShelfLight.PIXELS; k++) {
      int argb =
          moves
              ? light.orElseThrow().moving(k, frame)
              : light.orElseThrow().stripes().get(k).argb(frame);
      g.setFill(colour(argb));
      g.fillRect(0, k * pixel, cell.getWidth(), Math.max(1, pixel - 0.5));
    }
  }

  @Override
  protected void layoutChildren() {
    double left = wide ? CELL + GAP : 0;
    chart.setLayoutX(left);
    size(chart, Math.max(1, getWidth() - left), getHeight());
    size(cell, wide ? CELL : 1, getHeight());
    line.setHeight(getHeight());
    GraphicsContext g = chart.getGraphicsContext2D();
    g.clearRect(0, 0, chart.getWidth(), chart.getHeight());
    light.ifPresent(
        now -> {
          g.setImageSmoothing(false);
          g.drawImage(image(now, chart.getHeight()), 0, 0, chart.getWidth(), chart.getHeight());
        });
    int was = shown;
    shown = Integer.MIN_VALUE;
    frame(Math.max(-1, was));
  }

  private static void size(Canvas canvas, double width, double height) {
    canvas.setWidth(width);
    canvas.setHeight(height);
  }

  // Rows of the image are parts of the height, with a line of the ground between pixels.
  private static WritableImage image(ShelfLight light, double height) {
    int rows = Math.max(ShelfLight.PIXELS, (int) Math.round(height * SCREEN_SCALE));
    WritableImage image = new WritableImage(ShelfLight.FRAMES, rows);
    boolean parted = rows >= 3 * SCREEN_SCALE * ShelfLight.PIXELS;
    for (int y = 0; y < rows; y++) {
      int pixel = y * ShelfLight.PIXELS / rows;
      boolean between = parted && pixel != (y + 1) * ShelfLight.PIXELS / rows;
      for (int x = 0; !between && x < ShelfLight.FRAMES; x++) {
        image.getPixelWriter().setArgb(x, y, light.stripes().get(pixel).argb(x));
      }
    }
    return image;
  }

  private static Color colour(int argb) {
    return Color.rgb(argb >> 16 & 0xFF, argb >> 8 & 0xFF, argb & 0xFF);
  }
}
