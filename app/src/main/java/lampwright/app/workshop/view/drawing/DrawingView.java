package lampwright.app.workshop.view.drawing;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.animation.PauseTransition;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.util.Duration;
import lampwright.app.picture.Dots;
import lampwright.app.picture.DrawingInk;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.drawing.CallOuts;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.PaintingJudge;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.view.CommandPopup;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.view.OutputScale;
import lampwright.app.workshop.view.PixelTip;
import lampwright.app.workshop.view.Stylesheets;
import lampwright.app.workshop.view.Theme;
import lampwright.exporters.picture.DisplayList;

/**
 * The model as it is drawn from one side, its lamps glowing with the frame that is shown, and a
 * leader line from each to its ribbon at the right edge.
 */
public final class DrawingView extends Region {
  /** How long the frame stands still before its light is shown in full, ms. */
  private static final double REST_MS = 600;

  private final DrawingModel model;
  private final LitGround ground;
  private final Inks<DrawingInk> inks = new Inks<>(DrawingInk.class, this::anew);
  private final DisplayPainter painter = new DisplayPainter(inks::paint);
  // Unseen; has the type that the stylesheet gives.
  private final Label type = new Label();
  private final Canvas sockets = new Canvas();
  private final Canvas over = new Canvas();
  private List<Object> socketsOf = List.of();
  private final CommandPopup popup = new CommandPopup();
  private boolean dirty = true;

  /**
   * @param judge is told what is painted
   * @param projectFile where the project is, beside which its pictures are
   */
  public DrawingView(
      DrawingModel model,
      Player player,
      PaintingJudge judge,
      Supplier<Optional<Path>> projectFile) {
    this.model = model;
    this.ground =
        new LitGround(model, player, judge, inks, new ProjectPictures(projectFile, this::anew));
    getStyleClass().addAll("drawing", Theme.PALETTE);
    setId("drawing");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setMinSize(160, 120);
    over.setMouseTransparent(true);
    sockets.setMouseTransparent(true);
    type.setManaged(false);
    type.setVisible(false);
    type.fontProperty().addListener((of, before, now) -> redraw());
    getChildren().setAll(inks, type, ground.node(), sockets, over);
    bind(player);
    listen();
  }

  private void bind(Player player) {
    model.bench().watch(BenchState::contents, (before, now) -> redraw());
    model.sheet().viewProperty().addListener((of, before, now) -> redraw());
    model.sightProperty().addListener((of, before, now) -> redraw());
    model.sheet().nightProperty().addListener((of, before, now) -> atNight(now));
    atNight(model.sheet().nightProperty().get());
    model.sheet().signsProperty().addListener((of, before, now) -> ground.light());
    model.sheet().rowsProperty().addListener((of, before, now) -> redraw());
    model.sheet().shiftProperty().addListener((of, before, now) -> redraw());
    model.sheet().liveProperty().addListener((of, before, now) -> ground.light());
    model.exposures().doublingsProperty().addListener((of, before, now) -> ground.light());
    player.dimmedProperty().addListener((of, before, now) -> ground.light());
    model.lights().lightProperty().addListener((of, before, now) -> ground.light());
    model.lights().progressProperty().addListener((of, before, now) -> ground.light());
    // One more pair of changes at each stop, fewer than two in a second.
    PauseTransition rest = new PauseTransition(Duration.millis(REST_MS));
    rest.setOnFinished(event -> ground.moving(player.playingProperty().get()));
    model
        .playhead()
        .frameProperty()
        .addListener(
            (of, before, now) -> {
              ground.turned();
              rest.playFromStart();
            });
    player
        .playingProperty()
        .addListener(
            (of, before, now) -> {
              ground.moving(true);
              rest.playFromStart();
            });
    focusedProperty().addListener((of, before, now) -> redraw());
    OutputScale.watch(this, this::redraw);
  }

  // By night the drawing has the night's palette, whatever the sheet has.
  private void atNight(boolean night) {
    getStylesheets().setAll(night ? List.of(Stylesheets.url("palette-night")) : List.of());
    redraw();
  }

  private void listen() {
    DrawingMouse mouse = new DrawingMouse(model, ground::frame);
    setOnMousePressed(
        event -> {
          requestFocus();
          mouse.pressed(event);
        });
    setOnMouseDragged(mouse::dragged);
    setOnMouseReleased(mouse::released);
    setOnMouseMoved(event -> setCursor(mouse.cursor(event)));
    PixelTip.install(this, model.explainer(), this::pointed);
    addEventHandler(ScrollEvent.SCROLL, event -> mouse.scrolled(event, getWidth(), getHeight()));
    addEventHandler(ZoomEvent.ZOOM, event -> mouse.pinched(event, getWidth(), getHeight()));
    setOnContextMenuRequested(
        event -> {
          popup.show(this, DrawingModel.ON_DRAWING, event.getScreenX(), event.getScreenY());
          event.consume();
        });
    addEventHandler(KeyEvent.KEY_PRESSED, new DrawingKeys(model)::pressed);
  }

  private PixelTip.Pointed pointed(MouseEvent event) {
    Dots.Frame frame = ground.frame();
    String note =
        model
            .at(frame, event.getX(), event.getY())
            .flatMap(lamp -> model.sheet().notesProperty().get().apply(lamp.id()))
            .orElse("");
    return new PixelTip.Pointed(note, model.spot(frame, event.getX(), event.getY()));
  }

  /** Takes the commands for the menu of a right click. */
  public void setCommands(Commands commands) {
    popup.setCommands(commands);
  }

  /** How often the outline was drawn. For tests: a lamp that is dragged must not draw it. */
  public int outlines() {
    return ground.outlines();
  }

  /** Ends its thread. */
  public void close() {
    ground.close();
  }

  private void anew() {
    ground.forget();
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
    boolean anew = ground.draw(width, height, OutputScale.of(this));
    CallOuts callOuts = new CallOuts(model, ground.frame(), width, height);
    List<Object> now =
        List.of(model.bench().project().rig().lamps(), model.bench().selection().lamps());
    if (anew || !now.equals(socketsOf)) {
      socketsOf = now;
      ground.light();
      paint(callOuts.sockets(), sockets);
      setAccessibleText(ground.missing().map(m -> model.words() + "; " + m).orElse(model.words()));
    }
    Font font = type.getFont();
    painter.family(font.getFamily());
    paint(callOuts.over(Math.ceil(font.getSize() * 1.1), ground.missing(), isFocused()), over);
  }

  private void paint(DisplayList list, Canvas canvas) {
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.clearRect(0, 0, list.width(), list.height());
    painter.paint(list, g);
  }
}
