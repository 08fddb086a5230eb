package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.LampOrder;
import lampwright.app.workshop.edit.ProjectColours;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.light.Colour;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/** What the ribbons show: which rows and which time are in sight, and the light on them. */
public final class RibbonsModel implements AutoCloseable {
  private final Texts texts = Texts.of("ribbons");
  private final Bench bench;
  private final LightService lights;
  private final Playhead playhead;
  private final DrawingSheet sheet;
  private final StripPainter strips;
  private final ObjectProperty<TimeAxis> axis = new SimpleObjectProperty<>(new TimeAxis(0, 5));
  private final ReadOnlyDoubleWrapper top = new ReadOnlyDoubleWrapper();
  private final BooleanProperty snapping = new SimpleBooleanProperty(true);
  private final BooleanProperty following = new SimpleBooleanProperty(true);
  private final ObjectProperty<Optional<BigDecimal>> beatMs =
      new SimpleObjectProperty<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<RibbonLayout>> layout =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Set<String> unfolded = Set.of();
  private double width = 600;
  private double height = 400;
  private double em = 13;
  private double rowsTop;
  private Optional<String> shownScene = Optional.empty();
  private List<?> laidOut = List.of();

  /**
   * @param screen runs what it is given on the screen's thread
   */
  public RibbonsModel(
      Bench bench, LightService lights, Playhead playhead, DrawingSheet sheet, Executor screen) {
    this.bench = bench;
    this.lights = lights;
    this.playhead = playhead;
    this.sheet = sheet;
    this.strips = new StripPainter(screen);
    bench.watch(BenchState::contents, (before, now) -> layOut());
    bench.watch(
        state -> state.selection().lamp(), (before, now) -> now.ifPresent(this::bringIntoSight));
    sheet.viewProperty().addListener((of, before, now) -> layOut());
    axis.addListener((of, before, now) -> requestStrips());
    top.addListener((of, before, now) -> requestStrips());
    lights.progressProperty().addListener((of, before, now) -> requestStrips());
    lights.lightProperty().addListener((of, before, now) -> requestStrips());
    bench.watch(BenchState::frame, (before, now) -> follow());
    layOut();
  }

  /** Which time is in sight. */
  public ObjectProperty<TimeAxis> axisProperty() {
    return axis;
  }

  public TimeAxis axis() {
    return axis.get();
  }

  /** How far the rows are scrolled, in pixels. */
  public ReadOnlyDoubleProperty topProperty() {
    return top.getReadOnlyProperty();
  }

  public double top() {
    return top.get();
  }

  /** Whether edges are drawn to frames and marks. */
  public BooleanProperty snappingProperty() {
    return snapping;
  }

  /** Whether the time in sight follows the playhead. */
  public BooleanProperty followingProperty() {
    return following;
  }

  /** Time between the beats that edges are drawn to; off if empty. */
  public ObjectProperty<Optional<BigDecimal>> beatMsProperty() {
    return beatMs;
  }

  /** Where rows and cues stand; empty while there is no scene. */
  public ReadOnlyObjectProperty<Optional<RibbonLayout>> layoutProperty() {
    return layout.getReadOnlyProperty();
  }

  public Optional<RibbonLayout> layout() {
    return layout.get();
  }

  /** The light of the lamps in sight, by index in the rig. */
  public ReadOnlyObjectProperty<Map<Integer, Strip>> stripsProperty() {
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

  public DrawingSheet sheet() {
    return sheet;
  }

  public Bench bench() {
    return bench;
  }

  public Playhead playhead() {
    return playhead;
  }

  public double width() {
    return width;
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
    width = newWidth;
    height = newHeight;
    em = newEm;
    if (other || first) {
      layOut();
    }
    scrollTo(top());
    requestStrips();
  }

  /** Whether a lamp's duty curves are shown. */
  public boolean isUnfolded(String lamp) {
    return unfolded.contains(lamp);
  }

  /** Shows or hides the duty curves of a lamp. */
  public void toggleUnfolded(String lamp) {
    Set<String> changed = new HashSet<>(unfolded);
    if (!changed.remove(lamp)) {
      changed.add(lamp);
    }
    unfolded = Set.copyOf(changed);
    layOut();
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
  }

  /** What is at a point of the rows' pane. */
  public Optional<RibbonLayout.Hit> hit(double x, double y) {
    return layout().flatMap(l -> l.hit(x, y + top(), axis()));
  }

  /** The cues whose handles a rectangle of the rows' pane touches; none if there is no scene. */
  public List<CueRef> touched(double left, double top, double right, double bottom) {
    return layout()
        .map(l -> l.touched(left, top + top(), right, bottom + top(), axis()))
        .orElse(List.of());
  }

  /** Shows the whole scene. */
  public void showAll() {
    bench.scene().ifPresent(s -> axis.set(TimeAxis.fitting(0, s.lengthMs().doubleValue(), width)));
  }

  /** Shows the selected cues, or the whole scene if none are. */
  public void showChosen() {
    List<Cue> cues = chosen();
    if (cues.isEmpty()) {
      showAll();
      return;
    }
    double from = cues.stream().mapToDouble(c -> c.startMs().doubleValue()).min().orElse(0);
    double to = cues.stream().mapToDouble(c -> c.endMs().doubleValue()).max().orElse(1);
    double room = (to - from) / 10;
    axis.set(TimeAxis.fitting(Math.max(0, from - room), to + room, width));
  }

  /** Looks closer (factor above 1) or from further away, around the playhead if it is in sight. */
  public void zoom(double factor) {
    double x = axis().x(playheadMs().doubleValue());
    axis.set(axis().zoomed(factor, x >= 0 && x <= width ? x : width / 2));
  }

  /** The selected cues. */
  public List<Cue> chosen() {
    return bench
        .scene()
        .map(s -> bench.selection().cues().stream().flatMap(ref -> ref.in(s).stream()).toList())
        .orElse(List.of());
  }

  /** The time of the frame that is shown. */
  public BigDecimal playheadMs() {
    return bench.scene().map(s -> CueEdits.frameMs(s, playhead.frame())).orElse(BigDecimal.ZERO);
  }

  /** Goes to the frame that is shown at a time. */
  public void scrub(double ms) {
    bench
        .scene()
        .ifPresent(s -> playhead.go((int) (ms * s.framesPerSecond().doubleValue() / 1000 + 1e-9)));
  }

  /** What edges are drawn to while these cues move. */
  public Snap snap(Collection<CueRef> moving, boolean free) {
    Scene scene = bench.scene().orElseThrow();
    return free || !snapping.get()
        ? Snap.off(scene)
        : Snap.on(scene, moving, playheadMs(), beatMs.get());
  }

  /** A cue in words, for people who hear the screen. */
  public String words(CueRef ref) {
    Scene scene = bench.scene().orElseThrow();
    Cue cue = ref.in(scene).orElseThrow();
    List<String> lamps =
        scene.tracks().get(ref.track()).lamps().stream()
            .map(id -> bench.project().rig().lamp(id).map(Lamp::title).orElse(id))
            .toList();
    return texts.get(
        "cue.words",
        String.join(", ", lamps),
        kind(cue),
        TimeAxis.label(cue.startMs().doubleValue()),
        TimeAxis.label(cue.endMs().doubleValue()));
  }

  /** The name of a cue's pattern. */
  public String kind(Cue cue) {
    return Titles.ofKind(cue.pattern().kind());
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
    now.add(unfolded);
    now.add(em);
    if (now.equals(laidOut)) {
      return;
    }
    laidOut = now;
    List<Lamp> order = LampOrder.of(bench.project().rig(), sheet.viewProperty().get());
    layout.set(scene.map(s -> new RibbonLayout(s, order, rig, unfolded, em)));
    if (!scene.map(Scene::id).equals(shownScene)) {
      shownScene = scene.map(Scene::id);
      strips.forget();
      showAll();
    }
    scrollTo(top());
    requestStrips();
  }

  private void tellRows() {
    List<DrawingSheet.Row> rows = new ArrayList<>();
    layout()
        .ifPresent(
            l -> {
              for (RibbonLayout.Row row : l.between(top(), top() + height)) {
                double centre = row.y() + row.stripHeight() / 2 - top();
                if (centre >= 0 && centre <= height) {
                  rows.add(new DrawingSheet.Row(row.lamp().id(), rowsTop + centre));
                }
              }
            });
    sheet.rowsProperty().set(List.copyOf(rows));
  }

  private void follow() {
    if (!following.get()) {
      return;
    }
    double x = axis().x(playheadMs().doubleValue());
    if (x < 0 || x > width) {
      axis.set(new TimeAxis(playheadMs().doubleValue(), axis().msPerPixel()));
    }
  }

  private void requestStrips() {
    Optional<SceneLight> light = lights.lightProperty().get();
    if (light.isEmpty() || layout().isEmpty()) {
      return;
    }
    List<Lamp> known = light.get().screen().lamps();
    List<Integer> lamps = new ArrayList<>();
    List<Integer> open = new ArrayList<>();
    for (RibbonLayout.Row row : layout().get().between(top(), top() + height)) {
      // The light may still be that of the rig before an edit.
      if (row.index() < known.size() && known.get(row.index()).id().equals(row.lamp().id())) {
        lamps.add(row.index());
        if (row.curves() > 0) {
          open.add(row.index());
        }
      }
    }
    int pixels = (int) Math.ceil(width);
    double lastMs = axis().ms(pixels);
    int needed =
        (int)
            Math.min(
                light.get().frames().frameCount(),
                lastMs * light.get().frames().table().framesPerSecond() / 1000 + 2);
    // More frames than are in sight change nothing.
    int rendered = Math.min(light.get().frames().rendered(), needed);
    strips.request(new StripPainter.Request(light.get(), rendered, axis(), pixels, lamps, open));
  }
}
