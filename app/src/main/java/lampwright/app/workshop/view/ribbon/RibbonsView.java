package lampwright.app.workshop.view.ribbon;

import java.util.List;
import java.util.Optional;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.input.ContextMenuEvent;
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
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.model.ribbon.MarkerCommands;
import lampwright.app.workshop.model.ribbon.RibbonCommands;
import lampwright.app.workshop.model.ribbon.RibbonDrawing;
import lampwright.app.workshop.model.ribbon.RibbonInk;
import lampwright.app.workshop.model.ribbon.RibbonSigns;
import lampwright.app.workshop.model.ribbon.RibbonWords;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.sound.Guide;
import lampwright.app.workshop.model.sound.GuideCommands;
import lampwright.app.workshop.view.CommandPopup;
import lampwright.app.workshop.view.DisplayPainter;
import lampwright.app.workshop.view.FontMeasure;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.view.NameEditor;
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
  private final RibbonWords words;
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
  private final FontMeasure measureType = new FontMeasure();
  private final MarkerCommands markers;
  private final CommandPopup popup = new CommandPopup();
  private final RibbonHints hints;
  private final NameEditor editor = new NameEditor(this);
  private final RibbonNames names;
  private final GuideView guide;
  private final TitlesDivider divider;
  // The canvases cover the border of this pane; its ring lies over them.
  private final Region ring = new Region();
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
  public RibbonsView(
      RibbonsModel model, CueCommands commands, Guide guide, Runnable toCueSettings) {
    this.model = model;
    this.bench = model.bench();
    this.words = new RibbonWords(bench);
    this.inks = new Inks<>(RibbonInk.class, this::repaintAll);
    this.painter = new DisplayPainter(inks::paint);
    this.rowsPainter = new DisplayPainter(inks::paint);
    this.scroll = new RibbonScroll(model);
    this.kinds = new KindMenu(this, commands);
    RubberBand band = new RubberBand(model, rows);
    this.markers = new MarkerCommands(model);
    this.hints = new RibbonHints(model, popup);
    this.names = new RibbonNames(model, markers, editor, timeLine, titles, rows);
    this.guide = new GuideView(model, guide, new DisplayPainter(inks::paint), this::repaintAll);
    this.divider = new TitlesDivider(model);
    this.titlesMouse = new TitlesMouse(model, names);
    this.timeLineMouse = new TimeLineMouse(model, markers, names::marker);
    this.rowsMouse = new RowsMouse(model, rows, band, kinds);
    this.keys =
        new RibbonKeys(commands, model.keyframes(), toCueSettings, this::offerKinds, this::cancel);
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
    getChildren().setAll(inks, measure, titles, timeLine, rows, band.shape(), empty);
    getChildren().addAll(scroll.bars());
    getChildren().addAll(this.guide, playhead, divider, editor);
    for (var part : new PatternDrop(model, commands, rows).shapes()) {
      part.setManaged(false);
      part.setMouseTransparent(true);
      getChildren().add(part);
    }
    ring.getStyleClass().add("ribbons-ring");
    ring.setManaged(false);
    ring.setMouseTransparent(true);
    getChildren().add(ring);
    bind();
    listen();
  }

  private void bind() {
    model.layoutProperty().addListener((of, before, now) -> repaintAll());
    model.stripsProperty().addListener((of, before, now) -> repaint());
    model
        .time()
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
    model.sheet().signsProperty().addListener((of, before, now) -> repaintAll());
    model.markerProperty().addListener((of, before, now) -> repaintAll());
    model.keyframes().selectedProperty().addListener((of, before, now) -> repaint());
    model.playhead().rangeProperty().addListener((of, before, now) -> repaintAll());
    model.rows().titleLinesProperty().addListener((of, before, now) -> repaintAll());
    model.playhead().frameProperty().addListener((of, before, now) -> placePlayhead());
    focusedProperty().addListener((of, before, now) -> speak());
  }

  private void listen() {
    addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getTarget() != editor) {
            keys.pressed(event);
          }
        });
    for (Node part : List.of(titles, timeLine, rows, guide)) {
      part.addEventHandler(MouseEvent.MOUSE_PRESSED, event -> requestFocus());
    }
    guide.parts().forEach(part -> hints.install(part, guide::hint));
    titles.setOnMousePressed(event -> titlesMouse.pressed(event, titles.getWidth()));
    hints.install(titles, event -> hints.title(event, titles.getWidth()));
    hints.installRows(rows);
    hints.install(timeLine, event -> hints.time(event, timeLine.getHeight()));
    setOnContextMenuRequested(this::popup);
    timeLine.setOnMousePressed(event -> timeLineMouse.pressed(event, timeLine.getHeight()));
    timeLine.setOnMouseDragged(timeLineMouse::dragged);
    timeLine.setOnMouseReleased(timeLineMouse::released);
    rows.addEventFilter(MouseEvent.MOUSE_PRESSED, this::dropper);
    rows.setOnMousePressed(rowsMouse::pressed);
    rows.setOnMouseDragged(rowsMouse::dragged);
    rows.setOnMouseReleased(rowsMouse::released);
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

  private void cancel() {
    boolean dragging = rowsMouse.isDragging() || timeLineMouse.isDragging() || guide.isDragging();
    rowsMouse.forget();
    guide.forget();
    timeLineMouse.forget();
    if (dragging) {
      bench.cancelGesture();
    } else {
      bench.select(bench.selection().withCues(List.of()));
    }
  }

  /** Takes the commands for the menus of right clicks. */
  public void setCommands(Commands commands) {
    popup.setCommands(commands);
  }

  /** What is done to the markers. */
  public MarkerCommands markers() {
    return markers;
  }

  private void popup(ContextMenuEvent event) {
    Object on = event.getPickResult().getIntersectedNode();
    List<String> ids;
    if (on == timeLine) {
      ids = RibbonCommands.ON_TIME_LINE;
    } else if (on == titles) {
      ids = RibbonCommands.ON_TITLE;
    } else if (guide.parts().contains(on)) {
      ids = GuideCommands.ON_GUIDE;
    } else {
      ids = bench.cue().isPresent() ? RibbonCommands.ON_CUE : RibbonCommands.ON_RIBBON;
    }
    popup.show(this, ids, event.getScreenX(), event.getScreenY());
    event.consume();
  }

  /** Names that are edited in their places. */
  public RibbonNames names() {
    return names;
  }

  /** Opens the list of patterns for a cue at the playhead. */
  public void offerKinds() {
    if (!bench.selection().lamps().isEmpty()) {
      double x = titles.getWidth() + Math.max(0, model.time().playheadX());
      kinds.offer(
          List.copyOf(bench.selection().lamps()),
          model.time().playheadMs(),
          Math.min(x, getWidth() - 40),
          rows.getLayoutY() + 20);
    }
  }

  @Override
  protected void layoutChildren() {
    Font base = measure.getFont();
    em = Math.ceil(base.getSize() * 1.25);
    if (base.getSize() != fontDrawn) {
      fontDrawn = base.getSize();
      painter.family(base.getFamily());
      measureType.family(base.getFamily());
      rowsPainter.family(base.getFamily());
      titlesDirty = true;
      timeDirty = true;
    }
    double titleWidth =
        Math.min(Math.rint(em * model.rows().titleLinesProperty().get()), getWidth() / 2);
    double bar = scroll.barWidth();
    double lineHeight = Math.rint(em * 2.6);
    double width = Math.max(1, getWidth() - titleWidth - bar);
    double guideHeight = guide.height(em);
    double top = lineHeight + guideHeight;
    double height = Math.max(1, getHeight() - top - bar);
    size(titles, 0, top, titleWidth, height);
    size(timeLine, titleWidth, 0, width, lineHeight);
    size(rows, titleWidth, top, width, height);
    guide.place(lineHeight, titleWidth, width, guideHeight);
    divider.place(titleWidth, getHeight(), em);
    scroll.place(getWidth(), getHeight(), rows);
    ring.resizeRelocate(0, 0, getWidth(), getHeight());
    model.resize(width, height, em, top);
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
    RibbonDrawing drawing = new RibbonDrawing(model, measureType, fontDrawn);
    if (titlesDirty) {
      painter.paint(
          drawing.titles(titles.getWidth(), titles.getHeight()), titles.getGraphicsContext2D());
    }
    if (timeDirty) {
      painter.paint(
          drawing.timeLine(timeLine.getWidth(), timeLine.getHeight()),
          timeLine.getGraphicsContext2D());
      guide.paint(measureType, measure.getFont());
    }
    titlesDirty = false;
    timeDirty = false;
    rowsPainter.paint(drawing.rows(rows.getWidth(), rows.getHeight()), rows.getGraphicsContext2D());
    boolean nothing = model.layout().map(l -> l.rows().isEmpty()).orElse(true);
    empty.setVisible(nothing);
    empty.setText(texts.get(bench.scene().isEmpty() ? "pane.noScene" : "pane.empty"));
    empty.relocate(titles.getWidth() + 16, rows.getLayoutY() + 24);
    scroll.show();
    placePlayhead();
    speak();
  }

  private void placePlayhead() {
    double x = model.time().playheadX();
    playhead.setVisible(bench.scene().isPresent() && x >= 0 && x <= rows.getWidth());
    double at = Math.round(titles.getWidth() + x) + 0.5;
    playhead.setStartX(at);
    playhead.setEndX(at);
    playhead.setStartY(0);
    playhead.setEndY(rows.getLayoutY() + rows.getHeight());
  }

  private void speak() {
    Selection now = bench.selection();
    Optional<CueRef> cue = now.cue();
    String text =
        cue.isPresent()
            ? words.cue(cue.get())
            : bench
                .lamp()
                .map(this::words)
                .orElseGet(
                    () ->
                        texts.get("pane", Integer.toString(bench.project().rig().lamps().size()))
                            + (guide.isVisible() ? "; " + guide.words() : ""));
    setAccessibleText(text);
  }

  private String words(Lamp lamp) {
    String signs = RibbonSigns.words(model.sheet().signs(), lamp.id());
    String words = texts.get("pane.lamp", Titles.of(lamp), Integer.toString(cues(lamp)));
    return signs.isEmpty() ? words : words + ", " + signs;
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
