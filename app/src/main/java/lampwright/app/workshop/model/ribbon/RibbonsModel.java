package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.LampOrder;
import lampwright.app.workshop.edit.ProjectColours;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.FrameRange;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.SceneLight;
import lampwright.engine.light.Colour;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Marker;
import lampwright.engine.scene.Scene;
import lampwright.exporters.picture.TypeMeasure;

/** What the ribbons show: which rows and which time are in sight, and the light on them. */
public final class RibbonsModel implements AutoCloseable {
  private final Bench bench;
  private final LightService lights;
  private final Playhead playhead;
  private final DrawingSheet sheet;
  private final RowsModel rows;
  private final StripPainter strips;
  private final PixelExplainer explainer;
  private final KeyframeCommands keyframes;
  private final TimeInSight time;
  private final Snapping snapping;
  private final ReadOnlyDoubleWrapper top = new ReadOnlyDoubleWrapper();
  private final ObjectProperty<Optional<Marker>> marker =
      new SimpleObjectProperty<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<RibbonLayout>> layout =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private double height = 400;
  private double em = 13;
  private double rowsTop;
  private Optional<String> shownScene = Optional.empty();
  private List<?> laidOut = List.of();

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public RibbonsModel(
      Bench bench,
      LightService lights,
      Playhead playhead,
      DrawingSheet sheet,
      PixelExplainer explainer,
      Executor screen) {
    this.bench = bench;
    this.lights = lights;
    this.playhead = playhead;
    this.sheet = sheet;
    this.time = new TimeInSight(bench, playhead);
    this.snapping = new Snapping(bench, time);
    this.rows = new RowsModel(bench);
    this.strips = new StripPainter(screen);
    this.explainer = explainer;
    this.keyframes = new KeyframeCommands(this);
    bench.setGuard((before, after) -> sheet.signs().refuses(before, after));
    bench.watch(BenchState::contents, (before, now) -> layOut());
    bench.watch(
        state -> state.selection().lamp(), (before, now) -> now.ifPresent(this::bringIntoSight));
    sheet.viewProperty().addListener((of, before, now) -> layOut());
    rows.lookProperty().addListener((of, before, now) -> layOut());
    time.axisProperty().addListener((of, before, now) -> requestStrips());
    top.addListener((of, before, now) -> requestStrips());
    lights.progressProperty().addListener((of, before, now) -> requestStrips());
    lights.lightProperty().addListener((of, before, now) -> requestStrips());
    layOut();
  }

  /** Which time is in sight. */
  public TimeInSight time() {
    return time;
  }

  public TimeAxis axis() {
    return time.axis();
  }

  /** What edges are drawn to. */
  public Snapping snapping() {
    return snapping;
  }

  /** How far the rows are scrolled, in pixels. */
  public ReadOnlyDoubleProperty topProperty() {
    return top.getReadOnlyProperty();
  }

  public double top() {
    return top.get();
  }

  /** Where rows and cues stand; empty while there is no scene. */
  public ReadOnlyObjectProperty<Optional<RibbonLayout>> layoutProperty() {
    return layout.getReadOnlyProperty();
  }

  public Optional<RibbonLayout> layout() {
    return layout.get();
  }

  /** How the rows are seen. */
  public RowsModel rows() {
    return rows;
  }

  /** What the drawing and the ribbons agree on. */
  public DrawingSheet sheet() {
    return sheet;
  }

  /** What is done to the keyframes of the selected cue. */
  public KeyframeCommands keyframes() {
    return keyframes;
  }

  /** The selected marker of the scene. */
  public ObjectProperty<Optional<Marker>> markerProperty() {
    return marker;
  }

  /** The range of the scene that is looped, if there is one. */
  public Optional<FrameRange> range() {
    return playhead.range();
  }

  /**
   * The marker whose flag is at a point of a time line of this height, the last drawn of several.
   */
  public Optional<Marker> markerAt(double x, double y, double height) {
    if (y > TimeLineDrawing.flags(height)) {
      return Optional.empty();
    }
    return bench.scene().stream()
        .flatMap(scene -> scene.markers().stream())
        .filter(
            m -> {
              double from = axis().x(m.atMs().doubleValue());
              double wide = TimeLineDrawing.width(m, TypeMeasure.ESTIMATE, em * 0.75);
              return x >= from - 3 && x <= from + wide;
            })
        .reduce((one, other) -> other);
  }

  /** The heading at a height of the rows' pane. */
  public Optional<RibbonLayout.Heading> heading(double y) {
    return layout().flatMap(l -> l.heading(y + top()));
  }

  /** Sets a sign on lamps, or takes it from them if all have it. */
  public void toggle(LampSigns.Sign sign, Collection<String> lamps) {
    if (!lamps.isEmpty()) {
      sheet.signsProperty().set(sheet.signs().toggled(sign, lamps));
    }
  }

  /** The light of the rows and folded groups in sight, by indices of their lamps in the rig. */
  public ReadOnlyObjectProperty<Map<List<Integer>, Strip>> stripsProperty() {
    return strips.stripsProperty();
  }

  /** The colour that is given to what is at a point of the rows: a cue, or a lamp at a time. */
  public Optional<Colour> colourAt(double x, double y) {
    Optional<Scene> scene = bench.scene();
    Optional<RibbonLayout.Hit> hit = scene.flatMap(s -> hit(x, y));
    Optional<Cue> cue = hit.flatMap(RibbonLayout.Hit::cue).flatMap(ref -> ref.in(scene.get()));
    return cue.isPresent()
        ? cue.flatMap(ProjectColours::of)
        : hit.flatMap(
            h ->
                ProjectColours.at(
                    scene.orElseThrow(),
                    h.row().lamp().id(),
                    BigDecimal.valueOf(Math.max(0, axis().ms(x)))));
  }

  public Bench bench() {
    return bench;
  }

  public Playhead playhead() {
    return playhead;
  }

  public double width() {
    return time.width();
  }

  public double height() {
    return height;
  }

  /**
   * Tells how large the rows' pane is, its line of text, and how far it is from the top, in pixels.
   */
  public void resize(double newWidth, double newHeight, double newEm, double newRowsTop) {
    rowsTop = newRowsTop;
    boolean first = shownScene.isEmpty();
    boolean other = newEm != em;
    time.resize(newWidth);
    height = newHeight;
    em = newEm;
    if (other || first) {
      layOut();
    }
    scrollTo(top());
    requestStrips();
  }

  /** Scrolls the rows, within what there is. */
  public void scrollTo(double wanted) {
    double most = layout().map(l -> l.height() - height).orElse(0.0);
    top.set(Math.max(0, Math.min(wanted, most)));
    tellRows();
  }

  /** Scrolls to a lamp's row if it is not in sight. */
  public void bringIntoSight(String lamp) {
    layout()
        .flatMap(l -> l.row(lamp))
        .ifPresent(
            row -> {
              if (row.y() < top()) {
                scrollTo(row.y());
              } else if (row.y() + row.height() > top() + height) {
                scrollTo(row.y() + row.height() - height);
              }
            });
    layout().flatMap(l -> l.folded(lamp)).ifPresent(this::bringIntoSight);
  }

  /** Scrolls to a heading if it is not in sight. */
  public void bringIntoSight(RibbonLayout.Heading heading) {
    if (heading.y() < top() || heading.y() + heading.height() > top() + height) {
      scrollTo(heading.y());
    }
  }

  /** What is at a point of the rows' pane. */
  public Optional<RibbonLayout.Hit> hit(double x, double y) {
    return layout().flatMap(l -> l.hit(x, y + top(), axis()));
  }

  /** Why pixels of strips show what they show. */
  public PixelExplainer explainer() {
    return explainer;
  }

  /** The pixel and frame at a point of the rows' pane, if there is a strip. */
  public Optional<PixelExplainer.Spot> spot(double x, double y) {
    return bench
        .scene()
        .flatMap(
            scene ->
                hit(x, y)
                    .filter(RibbonLayout.Hit::strip)
                    .flatMap(hit -> spotOf(scene, hit.row(), y + top(), axis().ms(x))));
  }

  /** The pixel of a strip at a height in it, and the frame that is shown at a time. */
  private static Optional<PixelExplainer.Spot> spotOf(
      Scene scene, RibbonLayout.Row row, double y, double ms) {
    int frame = (int) Math.floor(ms * scene.framesPerSecond().doubleValue() / 1000 + 1e-9);
    if (frame < 0 || frame >= scene.frameCount() || y < row.stripY() || y >= row.curvesY()) {
      return Optional.empty();
    }
    int pixels = row.lamp().fitting().lights();
    int pixel = (int) Math.floor((y - row.stripY()) / row.stripHeight() * pixels);
    return Optional.of(
        new PixelExplainer.Spot(row.lamp().id(), Math.min(pixels - 1, pixel), frame));
  }

  /** The cues whose handles a rectangle of the rows' pane touches; none if there is no scene. */
  public List<CueRef> touched(double left, double top, double right, double bottom) {
    return layout()
        .map(l -> l.touched(left, top + top(), right, bottom + top(), axis()))
        .orElse(List.of());
  }

  @Override
  public void close() {
    strips.close();
  }

  private void layOut() {
    Optional<Scene> scene = bench.scene();
    List<Lamp> rig = bench.project().rig().lamps();
    // Most changes of a selection move nothing.
    List<Object> now = new ArrayList<>();
    now.add(scene);
    now.add(rig);
    now.add(sheet.viewProperty().get());
    now.add(rows.look());
    now.add(em);
    if (now.equals(laidOut)) {
      return;
    }
    laidOut = now;
    List<Lamp> order = LampOrder.of(bench.project().rig(), sheet.viewProperty().get());
    layout.set(scene.map(s -> new RibbonLayout(s, order, rig, rows.look(), em)));
    if (!scene.map(Scene::id).equals(shownScene)) {
      shownScene = scene.map(Scene::id);
      marker.set(Optional.empty());
      strips.forget();
      time.showAll();
    }
    scrollTo(top());
    requestStrips();
  }

  private void tellRows() {
    sheet
        .rowsProperty()
        .set(layout().map(l -> LeaderEnds.of(l, top(), height, rowsTop)).orElse(List.of()));
  }

  private void requestStrips() {
    Optional<SceneLight> light = lights.lightProperty().get();
    if (light.isPresent() && layout().isPresent()) {
      List<String> rig = bench.project().rig().lamps().stream().map(Lamp::id).toList();
      strips.request(
          StripPainter.Request.of(
              light.get(), layout().get(), rig, axis(), top(), width(), height));
    }
  }
}
