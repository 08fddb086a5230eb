package lampwright.app.workshop.view.drawing;

import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import lampwright.app.outline.Outline;
import lampwright.app.picture.Dots;
import lampwright.app.picture.DrawingInk;
import lampwright.app.picture.Glow;
import lampwright.app.picture.Lenses;
import lampwright.app.picture.ModelDrawing;
import lampwright.app.workshop.model.LiveFrame;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.Painting;
import lampwright.app.workshop.model.drawing.PaintingJudge;
import lampwright.app.workshop.model.drawing.Sight;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.Inks;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.ScreenLight;
import org.jspecify.annotations.Nullable;

/**
 * The model's picture or outline, with the light of the frame that is shown painted upon it: as
 * many pixels as the screen has there, so that it is sharp at any scale of the screen.
 */
final class LitGround {
  private static final double MARGIN = 34;

  private final DrawingModel model;
  private final Player player;
  private final PaintingJudge judge;
  private final Inks<DrawingInk> inks;
  private final ProjectPictures pictures;
  private final ImageView glowing = new ImageView();
  private final GlowPainter painter = new GlowPainter(Platform::runLater, this::show);
  private @Nullable WritableImage image;
  private @Nullable Glow glow;
  private Dots.Frame frame = new Dots.Frame(0, 0, 1, 1);
  private double scale = 1;
  private List<Object> drawnOf = List.of();
  private List<Object> lensesOf = List.of();
  private int[] unlit = new int[0];
  private int outlines;
  private Optional<String> missing = Optional.empty();
  private boolean moving;

  LitGround(
      DrawingModel model,
      Player player,
      PaintingJudge judge,
      Inks<DrawingInk> inks,
      ProjectPictures pictures) {
    this.model = model;
    this.judge = judge;
    this.player = player;
    this.inks = inks;
    this.pictures = pictures;
    glowing.setMouseTransparent(true);
    // Each frame that is painted would ask for the layout of all around it.
    glowing.setManaged(false);
  }

  ImageView node() {
    return glowing;
  }

  /** Where the drawing stands in its pane. */
  Dots.Frame frame() {
    return frame;
  }

  /** The picture's file, if it can't be read. */
  Optional<String> missing() {
    return missing;
  }

  /** Ends its thread. */
  void close() {
    painter.close();
  }

  /** Forgets what it drew, as when colours have changed. */
  void forget() {
    drawnOf = List.of();
  }

  /**
   * Draws it, still unlit; gives whether it had to be drawn anew.
   *
   * @param nowScale pixels of the screen per unit of {@code width} and {@code height}
   */
  boolean draw(double width, double height, double nowScale) {
    int wide = (int) Math.max(1, Math.round(width * nowScale));
    int high = (int) Math.max(1, Math.round(height * nowScale));
    scale = nowScale;
    ProjectPictures.Found found = pictures.find(model.bench().project().picture(model.view()));
    Optional<Image> picture = found.image();
    missing = found.missing();
    boolean night = model.sheet().nightProperty().get();
    Outline outline = ModelDrawing.of(model.bench().project(), model.view());
    Sight sight = model.sightProperty().get();
    List<Object> now =
        List.of(wide, high, scale, model.view(), night, picture, missing, outline, sight);
    List<Object> lenses = places();
    if (now.equals(drawnOf)) {
      // A lamp that moves leaves the outline as it is; only the lenses upon it are set anew.
      boolean moved = !lenses.equals(lensesOf);
      lensesOf = lenses;
      if (moved) {
        glow = new Glow(wide, high, withLenses());
      }
      return moved;
    }
    drawnOf = now;
    lensesOf = lenses;
    double aspect =
        picture.map(p -> p.getWidth() / p.getHeight()).orElse(outline.width() / outline.height());
    frame = sight.of(Dots.Frame.within(width, height, aspect, MARGIN), width, height);
    Canvas canvas = new Canvas(wide, high);
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.scale(scale, scale);
    g.setFill(inks.of(DrawingInk.WASH));
    g.fillRect(0, 0, wide / scale, high / scale);
    if (picture.isPresent()) {
      // By night a photograph is seen as by moonlight.
      g.setGlobalAlpha(night ? 0.25 : 1);
      g.drawImage(picture.get(), frame.x(), frame.y(), frame.width(), frame.height());
      g.setGlobalAlpha(1);
    } else {
      DisplayList.Builder list = new DisplayList.Builder(width, height);
      ModelDrawing.add(list, outline, frame);
      new DisplayPainter(inks::paint).paint(list.build(), g);
    }
    keep(canvas, wide, high);
    return true;
  }

  /** How often the outline was drawn: a drag must not draw it. For tests. */
  int outlines() {
    return outlines;
  }

  // Discs of the film's colour where the pixels are, with soft edges.
  private int[] withLenses() {
    int width = (int) glowing.getImage().getWidth();
    int height = unlit.length / width;
    int[] argb = unlit.clone();
    Color film = inks.of(DrawingInk.FILM) instanceof Color colour ? colour : Color.BLACK;
    for (Dots.Dot lens : model.lenses(frame)) {
      Lenses.disc(argb, width, height, lens.times(scale), rgb(film));
    }
    return argb;
  }

  private static int rgb(Color colour) {
    return (int) Math.round(colour.getRed() * 255) << 16
        | (int) Math.round(colour.getGreen() * 255) << 8
        | (int) Math.round(colour.getBlue() * 255);
  }

  private List<Object> places() {
    return model.bench().project().rig().lamps().stream()
        .<Object>map(lamp -> List.of(lamp.fitting(), lamp.places()))
        .toList();
  }

  private void keep(Canvas canvas, int width, int height) {
    SnapshotParameters parameters = new SnapshotParameters();
    parameters.setFill(Color.TRANSPARENT);
    parameters.setViewport(new Rectangle2D(0, 0, width, height));
    WritableImage drawn = canvas.snapshot(parameters, new WritableImage(width, height));
    image = drawn;
    glowing.setImage(drawn);
    glowing.setFitWidth(width / scale);
    glowing.setFitHeight(height / scale);
    int[] argb = new int[width * height];
    drawn
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), argb, 0, width);
    unlit = argb;
    outlines++;
    int[] lensed = withLenses();
    show(lensed);
    glow = new Glow(width, height, lensed);
  }

  /**
   * Whether frames change: a dimmed preview is dimmed then. A frame that stands still shows its
   * light, since nothing flashes.
   */
  void moving(boolean now) {
    if (now != moving) {
      moving = now;
      light();
    }
  }

  /** Another frame is to be shown. */
  void turned() {
    moving = true;
    light();
  }

  /** Paints the light of the frame that is shown, in the background. */
  void light() {
    Glow now = glow;
    Optional<LiveFrame> live = model.sheet().liveProperty().get();
    if (live.isPresent() && now != null) {
      lightLive(live.get(), now);
      return;
    }
    Optional<SceneLight> light = model.lights().lightProperty().get();
    if (light.isEmpty() || now == null) {
      return;
    }
    byte[] bytes = new byte[light.get().frames().table().layout().bytes()];
    int at = Math.min(model.playhead().frame(), light.get().frames().frameCount() - 1);
    light.get().frames().read(at, bytes);
    ScreenLight screen = light.get().screen();
    List<Dots.Dot> dots = model.dots(screen, frame, scale);
    float exposure = model.exposures().factor();
    // First, since it may dim what is painted now.
    judge.painted(new Painting(light.get(), now, dots, exposure));
    paint(now, screen, bytes, dots, player.dimmedProperty().get() && moving);
  }

  // What the builder will do next is not known, so no judge can allow it more light.
  private void lightLive(LiveFrame live, Glow on) {
    paint(on, live.screen(), live.bytes(), model.dots(live.screen(), frame, scale), live.dimmed());
  }

  private void paint(
      Glow now, ScreenLight screen, byte[] bytes, List<Dots.Dot> dots, boolean dimmed) {
    float exposure = model.exposures().factor();
    View view = model.view();
    float most = dimmed ? Glow.DIMMED_MOST : Float.MAX_VALUE;
    painter.request(
        () -> {
          now.paint(screen, bytes, dots, exposure, most);
          return now;
        },
        brightest -> model.exposures().painted(view, brightest, exposure));
  }

  private void show(int[] argb) {
    WritableImage to = image;
    if (to != null && argb.length == pixels(to)) {
      to.getPixelWriter()
          .setPixels(
              0,
              0,
              (int) to.getWidth(),
              (int) to.getHeight(),
              PixelFormat.getIntArgbPreInstance(),
              argb,
              0,
              (int) to.getWidth());
    }
  }

  private static int pixels(WritableImage image) {
    int wide = (int) image.getWidth();
    int high = (int) image.getHeight();
    return wide * high;
  }
}
