package lampwright.app.workshop.view.ribbon;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.Orientation;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.Label;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ScrollBar;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.FreshPatterns;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.ribbon.CueDrag;
import lampwright.app.workshop.model.ribbon.CueHands;
import lampwright.app.workshop.model.ribbon.EndDrag;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Scene;
import org.jspecify.annotations.Nullable;

/**
 * The ribbons: titles at the left, time from left to right. One pane has the focus for all of them;
 * what is chosen in it is told to screen readers.
 */
public final class RibbonsView extends Region {
  private static final double MARK_REACH = 6;
  private static final double WHEEL_ZOOM = 1.0018;

  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final CueHands hands;
  private final Bench bench;
  private final Runnable toCueSheet;
  private final Inks<Ink> inks;
  private final RibbonPainter painter;
  private final Canvas titles = new Canvas();
  private final Canvas timeLine = new Canvas();
  private final Canvas rows = new Canvas();
  private final Line playhead = new Line();
  private final Rectangle band = new Rectangle();
  private final Text empty = new Text();
  // Unseen; has the size of text that the stylesheet gives.
  private final Label measure = new Label();
  private final ScrollBar down = new ScrollBar();
  private final ScrollBar along = new ScrollBar();
  private final ContextMenu kinds = new ContextMenu();
  private double em = 13;
  private double fontDrawn;
  private boolean dirty = true;
  private boolean titlesDirty = true;
  private boolean timeDirty = true;
  private boolean scrollsItself;
  private @Nullable CueDrag drag;
  private @Nullable EndDrag endDrag;
  private boolean scrubbing;
  private double bandX;
  private double bandY;
  private Selection bandBase = Selection.NOTHING;

  /**
   * @param toCueSheet gives the focus to the sheet of the chosen cue
   */
  public RibbonsView(RibbonsModel model, CueHands hands, Runnable toCueSheet) {
    this.model = model;
    this.hands = hands;
    this.bench = model.bench();
    this.toCueSheet = toCueSheet;
    this.inks = new Inks<>(Ink.class, this::repaintAll);
    this.painter = new RibbonPainter(model, inks);
    getStyleClass().add("ribbons");
    setId("ribbons");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.LIST_VIEW);
    playhead.getStyleClass().add("playhead");
    band.getStyleClass().add("rubber-band");
    empty.getStyleClass().add("ribbons-empty");
    for (var still : List.of(playhead, band, empty)) {
      still.setManaged(false);
      still.setMouseTransparent(true);
    }
    band.setVisible(false);
    measure.setManaged(false);
    measure.setVisible(false);
    measure.fontProperty().addListener((of, before, now) -> repaintAll());
    down.setOrientation(Orientation.VERTICAL);
    down.setFocusTraversable(false);
    along.setFocusTraversable(false);
    getChildren().setAll(inks, measure, titles, timeLine, rows, band, playhead, empty, down, along);
    for (String kind : FreshPatterns.kinds()) {
      MenuItem item = new MenuItem(texts.get("kind." + kind));
      item.setId("kind-" + kind);
      kinds.getItems().add(item);
    }
    bind();
    listen();
  }

  private void bind() {
    model.layoutProperty().addListener((of, before, now) -> repaintAll());
    model.stripsProperty().addListener((of, before, now) -> repaint());
    model
        .axisProperty()
        .addListener(
            (of, before, now) -> {
              timeDirty = true;
              repaint();
            });
    model
        .topProperty()
        .addListener(
            (of, before, now) -> {
              titlesDirty = true;
              repaint();
            });
    bench.selectionProperty().addListener((of, before, now) -> repaintAll());
    bench.projectProperty().addListener((of, before, now) -> repaintAll());
    model.playhead().frameProperty().addListener((of, before, now) -> placePlayhead());
    focusedProperty().addListener((of, before, now) -> speak());
    down.valueProperty()
        .addListener(
            (of, before, now) -> {
              if (!scrollsItself) {
                model.scrollTo(now.doubleValue());
              }
            });
    along
        .valueProperty()
        .addListener(
            (of, before, now) -> {
              if (!scrollsItself) {
                model
                    .axisProperty()
                    .set(new TimeAxis(now.doubleValue(), model.axis().msPerPixel()));
              }
            });
  }

  private void listen() {
    addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    titles.setOnMousePressed(this::titlePressed);
    timeLine.setOnMousePressed(this::timePressed);
    timeLine.setOnMouseDragged(this::timeDragged);
    timeLine.setOnMouseReleased(event -> release());
    rows.setOnMousePressed(this::pressed);
    rows.setOnMouseDragged(this::dragged);
    rows.setOnMouseReleased(event -> release());
    rows.setOnMouseMoved(event -> rows.setCursor(cursor(event)));
    addEventHandler(ScrollEvent.SCROLL, this::scrolled);
  }

  /** Opens the list of patterns for a cue at the playhead. */
  public void offerKinds() {
    if (!bench.selection().lamps().isEmpty()) {
      double x = titles.getWidth() + Math.max(0, model.axis().x(model.playheadMs().doubleValue()));
      offerKinds(
          List.copyOf(bench.selection().lamps()),
          model.playheadMs(),
          Math.min(x, getWidth() - 40),
          timeLine.getHeight() + 20);
    }
  }

  private void offerKinds(List<String> lamps, BigDecimal atMs, double x, double y) {
    for (MenuItem item : kinds.getItems()) {
      item.setOnAction(
          event -> {
            hands.add(item.getId().substring("kind-".length()), lamps, atMs, Optional.empty());
            requestFocus();
          });
    }
    var at = localToScreen(x, y);
    if (at != null) {
      kinds.show(this, at.getX(), at.getY());
    }
  }

  @Override
  protected void layoutChildren() {
    Font base = measure.getFont();
    em = Math.ceil(base.getSize() * 1.25);
    if (base.getSize() != fontDrawn) {
      fontDrawn = base.getSize();
      painter.font(base);
      titlesDirty = true;
      timeDirty = true;
    }
    double titleWidth = Math.min(Math.rint(em * 9.5), getWidth() / 3);
    double bar = Math.ceil(down.prefWidth(-1));
    double lineHeight = Math.rint(em * 1.7);
    double width = Math.max(1, getWidth() - titleWidth - bar);
    double height = Math.max(1, getHeight() - lineHeight - bar);
    size(titles, 0, lineHeight, titleWidth, height);
    size(timeLine, titleWidth, 0, width, lineHeight);
    size(rows, titleWidth, lineHeight, width, height);
    down.resizeRelocate(getWidth() - bar, lineHeight, bar, height);
    along.resizeRelocate(titleWidth, getHeight() - bar, width, bar);
    model.resize(width, height, em, lineHeight);
    dirty = false;
    paint();
  }

  // Another size empties a canvas.
  private void size(Canvas canvas, double x, double y, double width, double height) {
    if (canvas.getWidth() != width || canvas.getHeight() != height) {
      canvas.setWidth(width);
      canvas.setHeight(height);
      titlesDirty = true;
      timeDirty = true;
    }
    canvas.relocate(x, y);
  }

  private void repaintAll() {
    titlesDirty = true;
    timeDirty = true;
    repaint();
  }

  private void repaint() {
    if (!dirty) {
      dirty = true;
      requestLayout();
    }
  }

  private void paint() {
    if (titlesDirty) {
      painter.titles(titles.getGraphicsContext2D(), titles.getWidth(), titles.getHeight());
    }
    if (timeDirty) {
      painter.timeLine(timeLine.getGraphicsContext2D(), timeLine.getWidth(), timeLine.getHeight());
    }
    titlesDirty = false;
    timeDirty = false;
    painter.rows(rows.getGraphicsContext2D(), rows.getWidth(), rows.getHeight());
    boolean nothing = model.layout().map(l -> l.rows().isEmpty()).orElse(true);
    empty.setVisible(nothing);
    empty.setText(texts.get(bench.scene().isEmpty() ? "pane.noScene" : "pane.empty"));
    empty.relocate(titles.getWidth() + 16, timeLine.getHeight() + 24);
    scrollsItself = true;
    double most =
        Math.max(0, model.layout().map(RibbonLayout::height).orElse(0.0) - model.height());
    down.setMax(Math.max(1, most));
    down.setVisibleAmount(down.getMax() * model.height() / Math.max(1, most + model.height()));
    down.setDisable(most <= 0);
    down.setValue(model.top());
    double length = bench.scene().map(s -> s.lengthMs().doubleValue()).orElse(1.0);
    double shown = model.width() * model.axis().msPerPixel();
    along.setMax(Math.max(1, Math.max(length - shown * 0.5, model.axis().leftMs())));
    along.setVisibleAmount(along.getMax() * Math.min(1, shown / Math.max(1, length)));
    along.setUnitIncrement(shown / 10);
    along.setBlockIncrement(shown * 0.8);
    along.setValue(model.axis().leftMs());
    scrollsItself = false;
    placePlayhead();
    speak();
  }

  private void placePlayhead() {
    double x = model.axis().x(model.playheadMs().doubleValue());
    playhead.setVisible(bench.scene().isPresent() && x >= 0 && x <= rows.getWidth());
    double at = Math.round(titles.getWidth() + x) + 0.5;
    playhead.setStartX(at);
    playhead.setEndX(at);
    playhead.setStartY(0);
    playhead.setEndY(timeLine.getHeight() + rows.getHeight());
  }

  private void speak() {
    Selection now = bench.selection();
    Optional<CueRef> cue = now.cue();
    String text =
        cue.isPresent()
            ? model.words(cue.get())
            : bench
                .lamp()
                .map(lamp -> texts.get("pane.lamp", lamp.title(), Integer.toString(cues(lamp))))
                .orElseGet(
                    () ->
                        texts.get("pane", Integer.toString(bench.project().rig().lamps().size())));
    setAccessibleText(text);
  }

  private int cues(Lamp lamp) {
    return bench
        .scene()
        .map(
            s ->
                s.tracks().stream()
                    .filter(t -> t.lamps().contains(lamp.id()))
                    .mapToInt(t -> t.cues().size())
                    .sum())
        .orElse(0);
  }

  private void titlePressed(MouseEvent event) {
    requestFocus();
    Optional<RibbonLayout.Hit> hit = hit(0, event.getY());
    if (hit.isEmpty()) {
      bench.select(bench.selection().withLamps(List.of()).withCues(List.of()));
      return;
    }
    String lamp = hit.get().row().lamp().id();
    if (event.getX() < 16) {
      model.toggleUnfolded(lamp);
      return;
    }
    Set<String> lamps = new LinkedHashSet<>();
    if (event.isShortcutDown() || event.isShiftDown()) {
      lamps.addAll(bench.selection().lamps());
    }
    if (!(event.isShortcutDown() && lamps.remove(lamp))) {
      lamps.remove(lamp);
      lamps.add(lamp);
    }
    bench.select(bench.selection().withLamps(lamps).withCues(List.of()));
  }

  private void timePressed(MouseEvent event) {
    requestFocus();
    Optional<Scene> scene = bench.scene();
    if (scene.isEmpty()) {
      return;
    }
    double end = model.axis().x(scene.get().lengthMs().doubleValue());
    if (Math.abs(event.getX() - end) <= MARK_REACH && event.getY() > timeLine.getHeight() / 2) {
      endDrag = new EndDrag(model);
    } else {
      scrubbing = true;
      model.scrub(model.axis().ms(event.getX()));
    }
  }

  private void timeDragged(MouseEvent event) {
    double ms = Math.max(0, model.axis().ms(event.getX()));
    if (endDrag != null) {
      endDrag.to(ms, event.isAltDown());
    } else if (scrubbing) {
      model.scrub(ms);
    }
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    kinds.hide();
    Optional<RibbonLayout.Hit> hit = hit(event.getX(), event.getY());
    if (hit.isPresent() && hit.get().cue().isPresent()) {
      choose(hit.get(), event);
      if (event.getButton() == MouseButton.PRIMARY) {
        drag = new CueDrag(model, hit.get(), model.axis().ms(event.getX()));
      }
      return;
    }
    Selection before = bench.selection();
    hit.ifPresent(
        h -> {
          if (!event.isShiftDown() && !event.isShortcutDown()) {
            bench.select(before.withLamps(List.of(h.row().lamp().id())).withCues(List.of()));
          }
        });
    boolean asks = event.getClickCount() == 2 || event.getButton() == MouseButton.SECONDARY;
    if (hit.isPresent() && asks) {
      BigDecimal at =
          model
              .snap(List.of(), event.isAltDown())
              .edge(model.axis().ms(event.getX()), MARK_REACH * model.axis().msPerPixel());
      offerKinds(
          List.of(hit.get().row().lamp().id()),
          at,
          titles.getWidth() + event.getX(),
          timeLine.getHeight() + event.getY());
      return;
    }
    bandX = event.getX();
    bandY = event.getY();
    bandBase = event.isShiftDown() || event.isShortcutDown() ? before : bench.selection();
    band.setVisible(true);
    placeBand(bandX, bandY);
  }

  private void choose(RibbonLayout.Hit hit, MouseEvent event) {
    CueRef ref = hit.cue().orElseThrow();
    Set<CueRef> cues = new LinkedHashSet<>();
    boolean more = event.isShiftDown() || event.isShortcutDown();
    boolean held = bench.selection().cues().contains(ref);
    if (more || held) {
      cues.addAll(bench.selection().cues());
    }
    cues.remove(ref);
    if (!(event.isShortcutDown() && held)) {
      cues.add(ref);
    }
    bench.select(bench.selection().withLamps(List.of(hit.row().lamp().id())).withCues(cues));
  }

  private void dragged(MouseEvent event) {
    if (drag != null) {
      Optional<String> lamp = hit(event.getX(), event.getY()).map(h -> h.row().lamp().id());
      drag.to(model.axis().ms(event.getX()), lamp, event.isAltDown());
    } else if (band.isVisible()) {
      placeBand(event.getX(), event.getY());
      Set<CueRef> cues = new LinkedHashSet<>(bandBase.cues());
      cues.addAll(inBand(event.getX(), event.getY()));
      bench.select(bandBase.withCues(cues));
    }
  }

  private void placeBand(double x, double y) {
    band.setX(titles.getWidth() + Math.min(bandX, x));
    band.setY(timeLine.getHeight() + Math.min(bandY, y));
    band.setWidth(Math.abs(x - bandX));
    band.setHeight(Math.abs(y - bandY));
  }

  private List<CueRef> inBand(double x, double y) {
    List<CueRef> found = new ArrayList<>();
    double top = Math.min(bandY, y) + model.top();
    double bottom = Math.max(bandY, y) + model.top();
    Scene scene = bench.scene().orElseThrow();
    for (RibbonLayout.Row row : model.layout().orElseThrow().between(top, bottom)) {
      for (int lane = 0; lane < row.lanes().size(); lane++) {
        int track = row.lanes().get(lane);
        for (int c = 0; c < scene.tracks().get(track).cues().size(); c++) {
          RibbonLayout.Handle handle =
              RibbonLayout.handle(row, lane, scene.tracks().get(track).cues().get(c), model.axis());
          if (handle.x() < Math.max(bandX, x)
              && handle.x() + handle.width() > Math.min(bandX, x)
              && handle.y() < bottom
              && handle.y() + handle.height() > top) {
            found.add(new CueRef(track, c));
          }
        }
      }
    }
    return found;
  }

  private void release() {
    if (drag != null) {
      drag.end();
      drag = null;
    }
    if (endDrag != null) {
      endDrag.end();
      endDrag = null;
    }
    scrubbing = false;
    band.setVisible(false);
  }

  private void cancel() {
    if (drag != null || endDrag != null) {
      drag = null;
      endDrag = null;
      bench.cancelGesture();
    } else {
      bench.select(bench.selection().withCues(List.of()));
    }
    band.setVisible(false);
  }

  private Optional<RibbonLayout.Hit> hit(double x, double y) {
    return model.layout().flatMap(l -> l.hit(x, y + model.top(), model.axis()));
  }

  private Cursor cursor(MouseEvent event) {
    Optional<RibbonLayout.Hit> hit = hit(event.getX(), event.getY());
    if (hit.flatMap(RibbonLayout.Hit::cue).isEmpty()) {
      return Cursor.DEFAULT;
    }
    return switch (hit.get().grip()) {
      case BODY -> Cursor.OPEN_HAND;
      case START -> Cursor.W_RESIZE;
      case END -> Cursor.E_RESIZE;
      case FADE_IN, FADE_OUT -> Cursor.CROSSHAIR;
    };
  }

  private void scrolled(ScrollEvent event) {
    double amount = event.getDeltaY() == 0 ? event.getDeltaX() : event.getDeltaY();
    if (event.isShortcutDown()) {
      double x = Math.max(0, event.getX() - titles.getWidth());
      model.axisProperty().set(model.axis().zoomed(Math.pow(WHEEL_ZOOM, amount), x));
    } else if (event.isShiftDown() || event.getDeltaY() == 0) {
      model.axisProperty().set(model.axis().panned(-amount));
    } else {
      model.scrollTo(model.top() - amount);
    }
    event.consume();
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown()) {
      return;
    }
    boolean known = event.isAltDown() ? altKey(event) : plainKey(event);
    if (known) {
      event.consume();
    }
  }

  // Alt moves the cue, in time and from lamp to lamp.
  private boolean altKey(KeyEvent event) {
    int frames = event.isShiftDown() ? 10 : 1;
    switch (event.getCode()) {
      case LEFT -> hands.nudge(-frames);
      case RIGHT -> hands.nudge(frames);
      case UP -> hands.toRow(-1);
      case DOWN -> hands.toRow(1);
      default -> {
        return false;
      }
    }
    return true;
  }

  private boolean plainKey(KeyEvent event) {
    KeyCode code = event.getCode();
    boolean shift = event.isShiftDown();
    switch (code) {
      case LEFT -> {
        if (shift) {
          hands.lengthen(-1);
        } else {
          hands.step(-1);
        }
      }
      case RIGHT -> {
        if (shift) {
          hands.lengthen(1);
        } else {
          hands.step(1);
        }
      }
      case UP -> hands.stepRow(-1);
      case DOWN -> hands.stepRow(1);
      case ENTER -> toCueSheet.run();
      case INSERT -> offerKinds();
      case DELETE, BACK_SPACE -> hands.remove();
      case ESCAPE -> cancel();
      default -> {
        return false;
      }
    }
    return true;
  }
}
