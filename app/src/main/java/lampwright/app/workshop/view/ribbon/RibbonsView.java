package lampwright.app.workshop.view.ribbon;

import java.util.List;
import java.util.Optional;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.model.ribbon.RibbonDrawing;
import lampwright.app.workshop.model.ribbon.RibbonInk;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Lamp;

/**
 * The ribbons: titles at the left, time from left to right. One pane has the focus for all of them;
 * what is selected in it is told to screen readers.
 */
public final class RibbonsView extends Region {
  private final Texts texts = Texts.of("ribbons");
  private final RibbonsModel model;
  private final Bench bench;
  private final Inks<RibbonInk> inks;
  private final DisplayPainter painter;
  // Its own, as it keeps the strips of the last drawing.
  private final DisplayPainter rowsPainter;
  private final Canvas titles = new Canvas();
  private final Canvas timeLine = new Canvas();
  private final Canvas rows = new Canvas();
  private final Line playhead = new Line();
  private final Text empty = new Text();
  // Unseen; has the size of text that the stylesheet gives.
  private final Label measure = new Label();
  private final RibbonScroll scroll;
  private final KindMenu kinds;
  private final TitlesMouse titlesMouse;
  private final TimeLineMouse timeLineMouse;
  private final RowsMouse rowsMouse;
  private final RibbonKeys keys;
  private double em = 13;
  private double fontDrawn;
  private boolean dirty = true;
  private boolean titlesDirty = true;
  private boolean timeDirty = true;

  /**
   * @param toCueSettings gives the focus to the settings of the selected cue
   */
  public RibbonsView(RibbonsModel model, CueCommands commands, Runnable toCueSettings) {
    this.model = model;
    this.bench = model.bench();
    this.inks = new Inks<>(RibbonInk.class, this::repaintAll);
    this.painter = new DisplayPainter(inks::paint);
    this.rowsPainter = new DisplayPainter(inks::paint);
    this.scroll = new RibbonScroll(model);
    this.kinds = new KindMenu(this, commands);
    RubberBand band = new RubberBand(model, rows);
    this.titlesMouse = new TitlesMouse(model);
    this.timeLineMouse = new TimeLineMouse(model);
    this.rowsMouse = new RowsMouse(model, rows, band, kinds);
    this.keys = new RibbonKeys(commands, toCueSettings, this::offerKinds, this::cancel);
    getStyleClass().add("ribbons");
    setId("ribbons");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.LIST_VIEW);
    playhead.getStyleClass().add("playhead");
    empty.getStyleClass().add("ribbons-empty");
    for (var still : List.of(playhead, band.shape(), empty)) {
      still.setManaged(false);
      still.setMouseTransparent(true);
    }
    measure.setManaged(false);
    measure.setVisible(false);
    measure.fontProperty().addListener((of, before, now) -> repaintAll());
    getChildren().setAll(inks, measure, titles, timeLine, rows, band.shape(), playhead, empty);
    getChildren().addAll(scroll.bars());
    for (var part : new PatternDrop(model, commands, rows).shapes()) {
      part.setManaged(false);
      part.setMouseTransparent(true);
      getChildren().add(part);
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
    bench.watch(BenchState::contents, (before, now) -> repaintAll());
    model.playhead().frameProperty().addListener((of, before, now) -> placePlayhead());
    focusedProperty().addListener((of, before, now) -> speak());
  }

  private void listen() {
    addEventHandler(KeyEvent.KEY_PRESSED, keys::pressed);
    for (Canvas part : List.of(titles, timeLine, rows)) {
      part.addEventHandler(MouseEvent.MOUSE_PRESSED, event -> requestFocus());
    }
    titles.setOnMousePressed(titlesMouse::pressed);
    timeLine.setOnMousePressed(event -> timeLineMouse.pressed(event, timeLine.getHeight()));
    timeLine.setOnMouseDragged(timeLineMouse::dragged);
    timeLine.setOnMouseReleased(event -> release());
    rows.addEventFilter(MouseEvent.MOUSE_PRESSED, this::dropper);
    rows.setOnMousePressed(rowsMouse::pressed);
    rows.setOnMouseDragged(rowsMouse::dragged);
    rows.setOnMouseReleased(event -> release());
    rows.setOnMouseMoved(event -> rows.setCursor(rowsMouse.cursor(event)));
    addEventHandler(ScrollEvent.SCROLL, event -> scroll.wheel(event, titles.getWidth()));
  }

  // While somebody waits for a colour, a press takes it and does nothing else.
  private void dropper(MouseEvent event) {
    if (model.sheet().dropper().isActive()) {
      model.sheet().dropper().give(model.colourAt(event.getX(), event.getY()));
      event.consume();
    }
  }

  private void release() {
    rowsMouse.release();
    timeLineMouse.release();
  }

  private void cancel() {
    boolean dragging = rowsMouse.isDragging() || timeLineMouse.isDragging();
    rowsMouse.forget();
    timeLineMouse.forget();
    if (dragging) {
      bench.cancelGesture();
    } else {
      bench.select(bench.selection().withCues(List.of()));
    }
  }

  /** Opens the list of patterns for a cue at the playhead. */
  public void offerKinds() {
    if (!bench.selection().lamps().isEmpty()) {
      double x = titles.getWidth() + Math.max(0, model.axis().x(model.playheadMs().doubleValue()));
      kinds.offer(
          List.copyOf(bench.selection().lamps()),
          model.playheadMs(),
          Math.min(x, getWidth() - 40),
          timeLine.getHeight() + 20);
    }
  }

  @Override
  protected void layoutChildren() {
    Font base = measure.getFont();
    em = Math.ceil(base.getSize() * 1.25);
    if (base.getSize() != fontDrawn) {
      fontDrawn = base.getSize();
      painter.family(base.getFamily());
      rowsPainter.family(base.getFamily());
      titlesDirty = true;
      timeDirty = true;
    }
    double titleWidth = Math.min(Math.rint(em * 9.5), getWidth() / 3);
    double bar = scroll.barWidth();
    double lineHeight = Math.rint(em * 1.7);
    double width = Math.max(1, getWidth() - titleWidth - bar);
    double height = Math.max(1, getHeight() - lineHeight - bar);
    size(titles, 0, lineHeight, titleWidth, height);
    size(timeLine, titleWidth, 0, width, lineHeight);
    size(rows, titleWidth, lineHeight, width, height);
    scroll.place(getWidth(), getHeight(), rows);
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
    RibbonDrawing drawing = new RibbonDrawing(model, fontDrawn);
    if (titlesDirty) {
      painter.paint(
          drawing.titles(titles.getWidth(), titles.getHeight()), titles.getGraphicsContext2D());
    }
    if (timeDirty) {
      painter.paint(
          drawing.timeLine(timeLine.getWidth(), timeLine.getHeight()),
          timeLine.getGraphicsContext2D());
    }
    titlesDirty = false;
    timeDirty = false;
    rowsPainter.paint(drawing.rows(rows.getWidth(), rows.getHeight()), rows.getGraphicsContext2D());
    boolean nothing = model.layout().map(l -> l.rows().isEmpty()).orElse(true);
    empty.setVisible(nothing);
    empty.setText(texts.get(bench.scene().isEmpty() ? "pane.noScene" : "pane.empty"));
    empty.relocate(titles.getWidth() + 16, timeLine.getHeight() + 24);
    scroll.show();
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
                .map(lamp -> texts.get("pane.lamp", Titles.of(lamp), Integer.toString(cues(lamp))))
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
}
