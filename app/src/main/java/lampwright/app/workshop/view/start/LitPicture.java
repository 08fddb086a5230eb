package lampwright.app.workshop.view.start;

import java.util.Optional;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.AccessibleRole;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Region;
import lampwright.app.outline.Models;
import lampwright.app.outline.Outline;
import lampwright.app.picture.Dots;
import lampwright.app.picture.DrawingInk;
import lampwright.app.picture.Glow;
import lampwright.app.picture.LitFrame;
import lampwright.app.picture.ModelDrawing;
import lampwright.app.picture.Sides;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.view.OutputScale;
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.DisplayList;

/** A small drawing of a model, with its light on it if there is any. */
final class LitPicture extends Region {
  private static final double MARGIN = 6;

  private final Inks<DrawingInk> inks;
  private final DisplayPainter painter;
  private final ImageView shown = new ImageView();
  private final boolean ground;
  // Held by the picture alone, which comes and goes with the list that it is in.
  private final ChangeListener<Number> repainting = (of, before, now) -> requestLayout();
  private ModelKind kind = ModelKind.RECOVERY_VEHICLE;
  private boolean nothing;
  private Optional<Image> photo = Optional.empty();
  private Optional<LitFrame> light = Optional.empty();

  /**
   * @param sheet whose colours it has
   * @param ground whether there is a ground behind it
   * @param night whether it has the palette of the night
   */
  LitPicture(SheetInks sheet, double width, double height, boolean ground, boolean night) {
    this.ground = ground;
    inks = sheet.of(night);
    sheet.changesProperty().addListener(new WeakChangeListener<>(repainting));
    painter = new DisplayPainter(inks::paint);
    size(width, height);
    setMouseTransparent(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    // Its size is the pane's: a new image asks for no other layout.
    shown.setManaged(false);
    OutputScale.watch(this, this::requestLayout);
    getChildren().setAll(shown);
  }

  /** Gives it another size. */
  void size(double width, double height) {
    setMinSize(width, height);
    setPrefSize(width, height);
    setMaxSize(width, height);
  }

  /** Takes a photograph of the model in place of the drawing; nothing takes the drawing again. */
  void photograph(Optional<Image> now) {
    photo = now;
    requestLayout();
  }

  /** Shows a kind of model, unlit. */
  void show(ModelKind now) {
    kind = now;
    light = Optional.empty();
    requestLayout();
  }

  /** Shows the ground alone, as of a file that can't be read. */
  void showNothing() {
    nothing = true;
    requestLayout();
  }

  /** Shows a project and its light. */
  void show(LitFrame now) {
    nothing = false;
    now.project().model().ifPresent(model -> kind = model);
    light = Optional.of(now);
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    // In pixels of the screen, or it would be blurred where they are small.
    double scale = OutputScale.of(this);
    int width = (int) Math.round(getWidth() * scale);
    int height = (int) Math.round(getHeight() * scale);
    if (width < 1 || height < 1) {
      return;
    }
    View view = view();
    Outline outline = Models.outline(kind, view);
    double aspect =
        photo
            .map(image -> image.getWidth() / image.getHeight())
            .orElse(outline.width() / outline.height());
    Dots.Frame frame = Dots.Frame.within(width, height, aspect, MARGIN * scale);
    Canvas canvas = new Canvas(width, height);
    GraphicsContext g = canvas.getGraphicsContext2D();
    if (ground) {
      g.setFill(inks.of(DrawingInk.WASH));
      g.fillRect(0, 0, width, height);
    }
    if (photo.isPresent()) {
      g.drawImage(photo.get(), frame.x(), frame.y(), frame.width(), frame.height());
    } else if (!nothing && (light.isEmpty() || light.get().project().model().isPresent())) {
      DisplayList.Builder list = new DisplayList.Builder(width, height);
      ModelDrawing.add(list, outline, frame);
      painter.paint(list.build(), g);
    }
    SnapshotParameters parameters = new SnapshotParameters();
    parameters.setFill(javafx.scene.paint.Color.TRANSPARENT);
    WritableImage image = canvas.snapshot(parameters, new WritableImage(width, height));
    light.ifPresent(now -> lit(image, now, view, frame));
    shown.setImage(image);
    shown.setFitWidth(getWidth());
    shown.setFitHeight(getHeight());
  }

  /** The usual side, or that on which the most lamps of a project are. */
  private View view() {
    View main = Models.mainView(kind);
    if (photo.isPresent()) {
      return main;
    }
    return light.map(now -> Sides.fullest(now.lamps(), main)).orElse(main);
  }

  private static void lit(WritableImage image, LitFrame light, View view, Dots.Frame frame) {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    int[] argb = new int[width * height];
    image
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), argb, 0, width);
    Glow glow = new Glow(width, height, argb);
    glow.paint(
        light.screen(), light.bytes(), light.dots(view, frame), light.exposure(), Float.MAX_VALUE);
    image
        .getPixelWriter()
        .setPixels(0, 0, width, height, PixelFormat.getIntArgbPreInstance(), glow.argb(), 0, width);
  }
}
