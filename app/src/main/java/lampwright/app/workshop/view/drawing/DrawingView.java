package lampwright.app.workshop.view.drawing;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import javafx.geometry.Rectangle2D;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import lampwright.app.workshop.edit.PictureFile;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.model.ScreenLight;
import lampwright.app.workshop.model.drawing.Dots;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.Glow;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.project.Picture;
import lampwright.engine.project.Project;
import lampwright.engine.rig.Lamp;
import org.jspecify.annotations.Nullable;

/**
 * The model as it is drawn from one side, its lamps glowing with the frame that is shown, and a
 * leader line from each to its ribbon at the right edge.
 */
public final class DrawingView extends Region {
  private static final double MARGIN = 34;
  private static final double STEP = 0.01;

  private final Texts texts = Texts.of("drawing");
  private final DrawingModel model;
  private final Player player;
  private final Supplier<Optional<Path>> projectFile;
  private final Inks<Ink> inks;
  private final ImageView glowing = new ImageView();
  private final Canvas sockets = new Canvas();
  private final Canvas over = new Canvas();
  private final GlowRoom room;
  private final Map<Path, Image> pictures = new HashMap<>();
  private @Nullable WritableImage image;
  private @Nullable Glow glow;
  private Dots.Frame frame = new Dots.Frame(0, 0, 1, 1);
  private List<Object> backgroundOf = List.of();
  private List<Object> socketsOf = List.of();
  private Optional<String> missing = Optional.empty();
  private boolean dirty = true;
  private @Nullable Project dragFrom;
  private Object gesture = new Object();
  private double pressX;
  private double pressY;

  /**
   * @param projectFile where the project is, beside which its pictures are
   */
  public DrawingView(DrawingModel model, Player player, Supplier<Optional<Path>> projectFile) {
    this.model = model;
    this.player = player;
    this.projectFile = projectFile;
    this.inks = new Inks<>(Ink.class, this::anew);
    this.room = new GlowRoom(this::show);
    getStyleClass().add("drawing");
    setId("drawing");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setMinSize(160, 120);
    over.setMouseTransparent(true);
    sockets.setMouseTransparent(true);
    glowing.setMouseTransparent(true);
    getChildren().setAll(inks, glowing, sockets, over);
    model.bench().projectProperty().addListener((of, before, now) -> redraw());
    model.bench().selectionProperty().addListener((of, before, now) -> redraw());
    model.sheet().viewProperty().addListener((of, before, now) -> redraw());
    model.sheet().nightProperty().addListener((of, before, now) -> redraw());
    model.sheet().rowsProperty().addListener((of, before, now) -> redraw());
    model.sheet().shiftProperty().addListener((of, before, now) -> redraw());
    model.exposureProperty().addListener((of, before, now) -> glow());
    player.dimmedProperty().addListener((of, before, now) -> glow());
    model.lights().lightProperty().addListener((of, before, now) -> glow());
    model.lights().progressProperty().addListener((of, before, now) -> glow());
    model.playhead().frameProperty().addListener((of, before, now) -> glow());
    setOnMousePressed(this::pressed);
    setOnMouseDragged(this::dragged);
    setOnMouseReleased(
        event -> {
          dragFrom = null;
          model.bench().endGesture();
        });
    setOnMouseMoved(
        event ->
            setCursor(
                at(event).isPresent()
                    ? Cursor.HAND
                    : model.waiting().isPresent() ? Cursor.CROSSHAIR : Cursor.DEFAULT));
    addEventHandler(ScrollEvent.SCROLL, this::scrolled);
    addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    focusedProperty().addListener((of, before, now) -> redraw());
  }

  /** Ends its thread. */
  public void close() {
    room.close();
  }

  private void anew() {
    backgroundOf = List.of();
    socketsOf = List.of();
    redraw();
  }

  private void redraw() {
    if (!dirty) {
      dirty = true;
      requestLayout();
    }
  }

  @Override
  protected void layoutChildren() {
    dirty = false;
    double width = Math.max(1, Math.floor(getWidth()));
    double height = Math.max(1, Math.floor(getHeight()));
    for (Canvas canvas : List.of(sockets, over)) {
      if (canvas.getWidth() != width || canvas.getHeight() != height) {
        canvas.setWidth(width);
        canvas.setHeight(height);
      }
    }
    background((int) width, (int) height);
    List<Object> now =
        List.of(
            backgroundOf, model.bench().project().rig().lamps(), model.bench().selection().lamps());
    if (!now.equals(socketsOf)) {
      socketsOf = now;
      glow();
      sockets(width, height);
      setAccessibleText(model.words());
    }
    overlay(width, height);
  }

  private void background(int width, int height) {
    Optional<Image> picture = picture();
    boolean night = model.sheet().nightProperty().get();
    List<Object> now = List.of(width, height, model.view(), night, picture, missing);
    if (now.equals(backgroundOf)) {
      return;
    }
    backgroundOf = now;
    double aspect =
        picture.map(p -> p.getWidth() / p.getHeight()).orElse(Outline.aspect(model.view()));
    frame = Dots.Frame.within(width, height, aspect, MARGIN);
    Canvas canvas = new Canvas(width, height);
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.setFill(inks.of(night ? Ink.NIGHT : Ink.DAY));
    g.fillRect(0, 0, width, height);
    if (picture.isPresent()) {
      // By night a photograph is seen as by moonlight.
      g.setGlobalAlpha(night ? 0.25 : 1);
      g.drawImage(picture.get(), frame.x(), frame.y(), frame.width(), frame.height());
      g.setGlobalAlpha(1);
    } else {
      Outline.draw(
          g,
          model.view(),
          frame,
          inks.of(night ? Ink.NIGHT_BODY : Ink.DAY_BODY),
          inks.of(night ? Ink.NIGHT_LINE : Ink.DAY_LINE));
    }
    SnapshotParameters parameters = new SnapshotParameters();
    parameters.setFill(Color.TRANSPARENT);
    parameters.setViewport(new Rectangle2D(0, 0, width, height));
    WritableImage drawn = canvas.snapshot(parameters, new WritableImage(width, height));
    int[] argb = new int[width * height];
    drawn
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), argb, 0, width);
    glow = new Glow(width, height, argb);
    WritableImage next = drawn;
    image = next;
    glowing.setImage(next);
  }

  private Optional<Image> picture() {
    missing = Optional.empty();
    Optional<Picture> wanted = model.bench().project().picture(model.view());
    Optional<Path> folder =
        projectFile.get().flatMap(f -> Optional.ofNullable(f.toAbsolutePath().getParent()));
    if (wanted.isEmpty()) {
      return Optional.empty();
    }
    if (folder.isEmpty()) {
      missing = wanted.map(Picture::file);
      return Optional.empty();
    }
    Path file = wanted.get().in(folder.get());
    Image known = pictures.get(file);
    if (known == null) {
      if (PictureFile.size(file).isEmpty()) {
        missing = wanted.map(Picture::file);
        return Optional.empty();
      }
      // Read in the background; it is drawn when it is there.
      Image loading = new Image(file.toUri().toString(), 1600, 1600, true, true, true);
      loading
          .progressProperty()
          .addListener(
              (of, before, now) -> {
                if (now.doubleValue() >= 1) {
                  anew();
                }
              });
      pictures.put(file, loading);
      known = loading;
    }
    if (known.isError()) {
      missing = wanted.map(Picture::file);
    }
    return known.getProgress() < 1 || known.isError() ? Optional.empty() : Optional.of(known);
  }

  private void glow() {
    Optional<SceneLight> light = model.lights().lightProperty().get();
    Glow now = glow;
    if (light.isEmpty() || now == null) {
      return;
    }
    byte[] bytes = new byte[light.get().table().layout().bytes()];
    int at = Math.min(model.playhead().frame(), light.get().frameCount() - 1);
    light.get().read(at, bytes);
    // Lamps where they are now, with the light of the rig that was rendered.
    Map<String, Integer> index = new HashMap<>();
    List<Lamp> lamps = light.get().screen().lamps();
    for (int i = 0; i < lamps.size(); i++) {
      index.put(lamps.get(i).id(), i);
    }
    Set<String> known = new HashSet<>(index.keySet());
    List<Lamp> moved =
        lamps.stream()
            .map(
                l ->
                    model
                        .bench()
                        .project()
                        .rig()
                        .lamp(l.id())
                        .filter(n -> known.contains(n.id()))
                        .map(n -> l.withPlace(n.place()))
                        .orElse(l.withPlace(Optional.empty())))
            .toList();
    List<Dots.Dot> dots = Dots.of(moved, light.get().screen()::pixels, model.view(), frame);
    float exposure = (float) Math.pow(2, model.exposureProperty().get());
    float most = player.dimmedProperty().get() ? Player.DIMMED_MOST : Float.MAX_VALUE;
    ScreenLight screen = light.get().screen();
    room.want(
        () -> {
          now.paint(screen, bytes, dots, exposure, most);
          return now;
        });
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

  // Rings around the lamps that are drawn: they change with the rig, not with the ribbons.
  private void sockets(double width, double height) {
    GraphicsContext g = sockets.getGraphicsContext2D();
    g.clearRect(0, 0, width, height);
    Set<String> chosen = model.bench().selection().lamps();
    for (Lamp lamp : model.drawn()) {
      boolean on = chosen.contains(lamp.id());
      double radius = radius(lamp);
      g.setStroke(inks.of(on ? Ink.LEADER_CHOSEN : Ink.SOCKET));
      g.setLineWidth(on ? 2 : 1);
      g.strokeOval(x(lamp) - radius, y(lamp) - radius, 2 * radius, 2 * radius);
    }
  }

  private double x(Lamp lamp) {
    return frame.x() + lamp.place().orElseThrow().x() * frame.width();
  }

  private double y(Lamp lamp) {
    return frame.y() + lamp.place().orElseThrow().y() * frame.height();
  }

  private double radius(Lamp lamp) {
    return Math.max(4, lamp.place().orElseThrow().size() * frame.width() / 2 + 2);
  }

  private void overlay(double width, double height) {
    GraphicsContext g = over.getGraphicsContext2D();
    g.clearRect(0, 0, width, height);
    Set<String> chosen = model.bench().selection().lamps();
    double size = new Text().getFont().getSize();
    g.setFont(Font.font(size * 0.85));
    Map<String, Lamp> drawn = new HashMap<>();
    model.drawn().forEach(lamp -> drawn.put(lamp.id(), lamp));
    for (DrawingSheet.Row row : model.sheet().rowsProperty().get()) {
      Lamp lamp = drawn.get(row.lamp());
      if (lamp != null) {
        double to = row.centreY() + model.sheet().shiftProperty().get();
        boolean on = chosen.contains(lamp.id());
        leader(g, x(lamp), y(lamp), radius(lamp), to, width, on);
      }
    }
    for (String id : chosen) {
      Lamp lamp = drawn.get(id);
      if (lamp != null) {
        label(g, lamp.title(), x(lamp), y(lamp) - radius(lamp) - 4);
      }
    }
    notes(g, width, height, size);
    if (isFocused()) {
      g.setStroke(inks.of(Ink.LEADER_CHOSEN));
      g.setLineWidth(1);
      g.strokeRect(0.5, 0.5, width - 1, height - 1);
    }
  }

  // Out at a slant, then level to the ribbon, as in call-out drawings.
  private void leader(
      GraphicsContext g, double x, double y, double radius, double to, double width, boolean on) {
    g.setStroke(inks.of(on ? Ink.LEADER_CHOSEN : Ink.LEADER));
    g.setLineWidth(on ? 1.6 : 0.8);
    double bend = Math.max(x + radius + 6, Math.min(width - 14, x + Math.abs(to - y)));
    double angle = Math.atan2(to - y, bend - x);
    g.strokeLine(x + radius * Math.cos(angle), y + radius * Math.sin(angle), bend, to);
    g.strokeLine(bend, to, width, to);
    g.setFill(inks.of(on ? Ink.LEADER_CHOSEN : Ink.LEADER));
    g.fillOval(width - 4, to - 2.5, 5, 5);
  }

  private void label(GraphicsContext g, String text, double x, double bottom) {
    Text measured = new Text(text);
    measured.setFont(g.getFont());
    double w = measured.getLayoutBounds().getWidth();
    double h = measured.getLayoutBounds().getHeight();
    double left = Math.max(2, Math.min(over.getWidth() - w - 8, x - w / 2 - 4));
    double top = Math.max(2, bottom - h - 2);
    g.setFill(inks.of(Ink.LABEL_BACK));
    g.fillRect(left, top, w + 8, h + 2);
    g.setFill(inks.of(Ink.LABEL));
    g.setTextBaseline(VPos.TOP);
    g.setTextAlign(TextAlignment.LEFT);
    g.fillText(text, left + 4, top + 1);
  }

  private void notes(GraphicsContext g, double width, double height, double size) {
    g.setFill(inks.of(Ink.LEADER));
    g.setTextBaseline(VPos.BOTTOM);
    g.setTextAlign(TextAlignment.LEFT);
    double y = height - 6;
    List<Lamp> elsewhere =
        model.bench().project().rig().lamps().stream()
            .filter(l -> l.place().filter(p -> p.view() != model.view()).isPresent())
            .toList();
    if (!elsewhere.isEmpty()) {
      g.fillText(texts.get("others", Integer.toString(elsewhere.size())), 8, y, width - 16);
      y -= size * 1.3;
    }
    if (model.waiting().isPresent()) {
      g.fillText(texts.get("unplaced.hint"), 8, y, width - 16);
      y -= size * 1.3;
    }
    if (missing.isPresent()) {
      g.fillText(texts.get("picture.missing", missing.get()), 8, y, width - 16);
    }
  }

  private Optional<Lamp> at(MouseEvent event) {
    return model.at(frame, event.getX(), event.getY());
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    Optional<Lamp> lamp = at(event);
    pressX = event.getX();
    pressY = event.getY();
    gesture = new Object();
    if (lamp.isPresent()) {
      boolean held = model.bench().selection().lamps().contains(lamp.get().id());
      if (!held || event.isShortcutDown()) {
        model.choose(lamp.get().id(), event.isShiftDown() || event.isShortcutDown());
      }
      dragFrom = model.bench().project();
    } else if (model.waiting().isPresent()) {
      double x = (event.getX() - frame.x()) / frame.width();
      double y = (event.getY() - frame.y()) / frame.height();
      model.put(model.waiting().get().id(), x, y);
    } else {
      model.bench().select(model.bench().selection().withLamps(List.of()).withCues(List.of()));
    }
  }

  private void dragged(MouseEvent event) {
    Project from = dragFrom;
    if (from != null) {
      model.drag(
          from,
          (event.getX() - pressX) / frame.width(),
          (event.getY() - pressY) / frame.height(),
          gesture);
    }
  }

  private void scrolled(ScrollEvent event) {
    if (event.isShortcutDown() && event.getDeltaY() != 0) {
      model.resize(event.getDeltaY() > 0 ? 1.1 : 1 / 1.1);
      event.consume();
    }
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown()) {
      return;
    }
    double step = event.isShiftDown() ? STEP / 4 : STEP;
    if (event.isAltDown()) {
      switch (event.getCode()) {
        case LEFT -> model.nudge(-step, 0);
        case RIGHT -> model.nudge(step, 0);
        case UP -> model.nudge(0, -step);
        case DOWN -> model.nudge(0, step);
        case PLUS, ADD, EQUALS -> model.resize(1.1);
        case MINUS, SUBTRACT -> model.resize(1 / 1.1);
        default -> {
          return;
        }
      }
      event.consume();
      return;
    }
    switch (event.getCode()) {
      case UP, LEFT -> model.step(-1);
      case DOWN, RIGHT -> model.step(1);
      case ENTER -> model.waiting().ifPresent(lamp -> model.put(lamp.id(), 0.5, 0.5));
      case DELETE, BACK_SPACE -> model.takeOff();
      case ESCAPE -> model.bench().cancelGesture();
      default -> {
        return;
      }
    }
    event.consume();
  }
}
