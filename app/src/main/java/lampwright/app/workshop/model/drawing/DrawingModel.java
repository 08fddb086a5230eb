package lampwright.app.workshop.model.drawing;

import static java.util.stream.Collectors.toUnmodifiableList;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.picture.Dots;
import lampwright.app.picture.Sides;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.LampOrder;
import lampwright.app.workshop.edit.Partners;
import lampwright.app.workshop.edit.PlaceEdits;
import lampwright.app.workshop.edit.ProjectColours;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.ScreenLight;
import org.jspecify.annotations.Nullable;

/** The lamps on the drawing: which are there, which is meant by a point, and moving them. */
public final class DrawingModel {
  /** What a right click on the drawing offers. */
  public static final List<String> ON_DRAWING =
      List.of(
          "ribbons.act.rename",
          "ribbons.act.mute",
          "ribbons.act.solo",
          "ribbons.act.lock",
          "",
          "drawing.act.hereToo",
          "drawing.act.turn",
          "drawing.act.mirror",
          "drawing.act.mirroring",
          "",
          "drawing.act.zoomIn",
          "drawing.act.zoomOut",
          "drawing.act.zoomFit",
          "drawing.act.picture");

  private final Texts texts = Texts.of("drawing");
  private final Bench bench;
  private final LightService lights;
  private final Playhead playhead;
  private final DrawingSheet sheet;
  private final PixelExplainer explainer;
  private final Exposures exposures;
  private final ObjectProperty<Sight> sight = new SimpleObjectProperty<>(Sight.WHOLE);
  private final BooleanProperty mirroring = new SimpleBooleanProperty();
  // They are asked for at every frame that is shown, and are the same for most.
  private @Nullable DotsOf dotsOf;
  private List<Dots.Dot> dots = List.of();

  private record DotsOf(
      ScreenLight screen,
      Dots.Frame frame,
      double scale,
      List<Lamp> lamps,
      View view,
      LampSigns signs) {}

  public DrawingModel(
      Bench bench,
      LightService lights,
      Playhead playhead,
      DrawingSheet sheet,
      PixelExplainer explainer) {
    this.bench = bench;
    this.lights = lights;
    this.playhead = playhead;
    this.sheet = sheet;
    this.explainer = explainer;
    this.exposures = new Exposures(bench, sheet);
    sheet.viewProperty().addListener((of, before, now) -> sight.set(Sight.WHOLE));
  }

  public Bench bench() {
    return bench;
  }

  public LightService lights() {
    return lights;
  }

  public Playhead playhead() {
    return playhead;
  }

  /** The colour that is given to a lamp at the playhead. */
  public Optional<Colour> colourNow(Lamp lamp) {
    return bench
        .scene()
        .flatMap(
            scene ->
                ProjectColours.at(scene, lamp.id(), CueEdits.frameMs(scene, playhead.frame())));
  }

  public DrawingSheet sheet() {
    return sheet;
  }

  /** How much its light is brightened. */
  public Exposures exposures() {
    return exposures;
  }

  /** How near the drawing is looked at. */
  public ObjectProperty<Sight> sightProperty() {
    return sight;
  }

  /** Whether the partner on the other side of the model is placed as well, in the mirror. */
  public BooleanProperty mirroringProperty() {
    return mirroring;
  }

  /** Looks nearer (above 1) or from further away, around the middle of what is in sight. */
  public void zoom(double factor) {
    Sight now = sight.get();
    sight.set(new Sight(now.zoom() * factor, now.x(), now.y()));
  }

  /** Places the partners of the selected lamps of this view in the mirror, once. */
  public void mirror() {
    Collection<String> lamps = chosenHere(bench.project());
    if (!lamps.isEmpty()) {
      View of = view();
      bench.apply(Edit.of(texts.get("edit.mirror"), p -> Partners.mirrored(p, lamps, of)));
    }
  }

  public View view() {
    return sheet.viewProperty().get();
  }

  /** Turns to the side on which most lamps are drawn. */
  public void showFullestView() {
    sheet.viewProperty().set(Sides.fullest(bench.project().rig().lamps()));
  }

  private static boolean isIn(Lamp lamp, View view) {
    return lamp.placeIn(view).isPresent();
  }

  /** The lamps drawn in this view, in the order of their ribbons. */
  public List<Lamp> drawn() {
    return LampOrder.of(bench.project().rig(), view()).stream()
        .filter(l -> isIn(l, view()))
        .toList();
  }

  /** The lamps drawn in other views. */
  public List<Lamp> elsewhere() {
    return bench.project().rig().lamps().stream()
        .filter(l -> l.place().isPresent() && !isIn(l, view()))
        .toList();
  }

  /** The lamps that stand on no drawing yet. */
  public List<Lamp> unplaced() {
    return bench.project().rig().lamps().stream().filter(l -> l.place().isEmpty()).toList();
  }

  /**
   * The dots of a rendered rig in this view: its light, with the lamps where they are now. The same
   * list as long as nothing of that changes.
   *
   * @param scale pixels of the screen per unit of the frame
   */
  public List<Dots.Dot> dots(ScreenLight screen, Dots.Frame frame, double scale) {
    Rig now = bench.project().rig();
    DotsOf of = new DotsOf(screen, frame, scale, now.lamps(), view(), sheet.signs());
    if (!of.equals(dotsOf)) {
      dotsOf = of;
      List<Dots.Dot> found = found(screen, frame, now);
      dots = found.stream().map(dot -> dot.times(scale)).collect(toUnmodifiableList());
    }
    return dots;
  }

  private List<Dots.Dot> found(ScreenLight screen, Dots.Frame frame, Rig now) {
    List<Lamp> moved =
        screen.lamps().stream()
            .map(l -> now.lamp(l.id()).map(there -> placedAs(l, there)).orElse(l))
            .toList();
    return Dots.of(moved, screen::pixels, view(), frame).stream()
        .filter(dot -> sheet.signs().shows(moved.get(dot.lamp()).id()))
        .toList();
  }

  /** Where the pixels of the lamps are in this view, lit or not. */
  public List<Dots.Dot> lenses(Dots.Frame frame) {
    List<Lamp> lamps = bench.project().rig().lamps();
    return Dots.of(lamps, i -> lamps.get(i).fitting().lights(), view(), frame);
  }

  private static Lamp placedAs(Lamp lamp, Lamp there) {
    return Lamp.SHAPE
        .draft(lamp)
        .set(Lamp.PLACE, there.place())
        .set(Lamp.ALSO_AT, there.alsoAt())
        .make();
  }

  /** The lamp at a point of the drawing, the last drawn if several are. */
  public Optional<Lamp> at(Dots.Frame frame, double x, double y) {
    Optional<Lamp> found = Optional.empty();
    for (Lamp lamp : bench.project().rig().lamps()) {
      for (Place place : lamp.places()) {
        double reach = Math.max(7, place.size() * frame.width() / 2 + 3);
        double dx = frame.atX(place) - x;
        double dy = frame.atY(place) - y;
        if (place.view() == view() && Math.hypot(dx, dy) <= reach) {
          found = Optional.of(lamp);
        }
      }
    }
    return found;
  }

  /** Why pixels show what they show. */
  public PixelExplainer explainer() {
    return explainer;
  }

  /**
   * The pixel that is nearest to a point on a lamp, at the frame of the playhead; none beside lamps
   * and where the lamps follow the situations.
   */
  public Optional<PixelExplainer.Spot> spot(Dots.Frame frame, double x, double y) {
    List<Lamp> lamps = bench.project().rig().lamps();
    Optional<Integer> lamp = at(frame, x, y).map(lamps::indexOf);
    if (lamp.isEmpty() || bench.scene().isEmpty() || sheet.liveProperty().get().isPresent()) {
      return Optional.empty();
    }
    return Dots.of(lamps, i -> lamps.get(i).fitting().lights(), view(), frame).stream()
        .filter(dot -> dot.lamp() == lamp.get())
        .min(Comparator.comparingDouble(dot -> Math.hypot(dot.x() - x, dot.y() - y)))
        .map(
            dot ->
                new PixelExplainer.Spot(lamps.get(dot.lamp()).id(), dot.pixel(), playhead.frame()));
  }

  /** Chooses a lamp, or adds it to the selected ones. */
  public void choose(String lamp, boolean more) {
    Set<String> lamps = new LinkedHashSet<>();
    if (more) {
      lamps.addAll(bench.selection().lamps());
      if (lamps.remove(lamp)) {
        bench.select(bench.selection().withLamps(lamps));
        return;
      }
    }
    lamps.add(lamp);
    bench.select(bench.selection().withLamps(lamps).withCues(List.of()));
  }

  /** The selected lamp, if it has no place: a click places it. */
  public Optional<Lamp> waiting() {
    return bench.lamp().filter(l -> l.place().isEmpty());
  }

  /** Places a lamp in this view. */
  public void put(String lamp, double x, double y) {
    apply(
        "edit.place",
        p -> mirrored(PlaceEdits.put(p, lamp, view(), x, y), List.of(lamp)),
        Optional.empty());
  }

  /**
   * Moves the selected lamps of this view.
   *
   * @param from the project before the gesture
   * @param byX share of the drawing's width
   */
  public void drag(Project from, double byX, double byY, Object gesture) {
    Collection<String> lamps = chosenHere(from);
    apply(
        "edit.move",
        p -> mirrored(PlaceEdits.move(from, lamps, view(), byX, byY), lamps),
        Optional.of(gesture));
  }

  /** Moves the selected lamps of this view by a step. */
  public void nudge(double byX, double byY) {
    Collection<String> lamps = chosenHere(bench.project());
    if (!lamps.isEmpty()) {
      apply(
          "edit.move",
          p -> mirrored(PlaceEdits.move(p, lamps, view(), byX, byY), lamps),
          Optional.of("nudge"));
    }
  }

  /** Makes the selected lamps of this view larger or smaller. */
  public void resize(double factor) {
    Collection<String> lamps = chosenHere(bench.project());
    if (!lamps.isEmpty()) {
      apply(
          "edit.resize",
          p -> mirrored(PlaceEdits.resize(p, lamps, view(), factor), lamps),
          Optional.of("resize"));
    }
  }

  /** Turns the selected lamps of this view, clockwise. */
  public void turn(double byDegrees) {
    Collection<String> lamps = chosenHere(bench.project());
    if (!lamps.isEmpty()) {
      apply(
          "edit.turn",
          p -> mirrored(PlaceEdits.turn(p, lamps, view(), byDegrees), lamps),
          Optional.of("turn"));
    }
  }

  /** Shows the selected lamp in this view as well, in the middle, if it is not there. */
  public void showHereToo() {
    bench.lamp().filter(lamp -> !isIn(lamp, view())).ifPresent(lamp -> put(lamp.id(), 0.5, 0.5));
  }

  /** Takes the selected lamps of this view off the drawing. */
  public void takeOff() {
    Collection<String> lamps = chosenHere(bench.project());
    if (!lamps.isEmpty()) {
      apply("edit.takeOff", p -> PlaceEdits.remove(p, lamps, view()), Optional.empty());
    }
  }

  /** Chooses the next (1) or previous (-1) lamp of this view; then those without a place. */
  public void step(int by) {
    List<Lamp> lamps = new ArrayList<>(drawn());
    lamps.addAll(unplaced());
    if (lamps.isEmpty()) {
      return;
    }
    int at = bench.lamp().map(lamps::indexOf).orElse(-1);
    int next = at < 0 ? 0 : Math.floorMod(at + by, lamps.size());
    choose(lamps.get(next).id(), false);
  }

  /** What is selected, in words. */
  public String words() {
    String view = texts.get("view." + view().key());
    return bench
        .lamp()
        .map(
            l ->
                l.place()
                    .map(
                        p ->
                            texts.get(
                                "words.lamp",
                                Titles.of(l),
                                texts.get("view." + p.view().key()),
                                Long.toString(Math.round(p.x() * 100)),
                                Long.toString(Math.round(p.y() * 100))))
                    .orElseGet(() -> texts.get("words.unplaced", Titles.of(l))))
        .orElseGet(() -> texts.get("words.view", view, Integer.toString(drawn().size())));
  }

  /** Gives the view shown a picture, or the drawn outline again. */
  public void picture(Optional<String> file) {
    apply("edit.picture", p -> PlaceEdits.picture(p, view(), file), Optional.empty());
  }

  private Project mirrored(Project project, Collection<String> lamps) {
    return mirroring.get() ? Partners.mirrored(project, lamps, view()) : project;
  }

  private Collection<String> chosenHere(Project in) {
    return bench.selection().lamps().stream()
        .filter(id -> in.rig().lamp(id).filter(lamp -> isIn(lamp, view())).isPresent())
        .toList();
  }

  private void apply(
      String name, java.util.function.UnaryOperator<Project> change, Optional<Object> gesture) {
    bench.apply(new Edit(texts.get(name), change, gesture));
  }
}
