package lampwright.app.workshop.edit;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import lampwright.engine.document.Picture;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;

/** What is done to lamps on the drawing, and to the drawing. */
public final class PlaceEdits {
  // Half a thousandth of a drawing is less than a pixel; longer numbers make files hard to read.
  private static final double GRAIN = 1000;
  private static final double LEAST_SIZE = 0.005;
  private static final double TURN = 360;

  private PlaceEdits() {}

  /**
   * Puts a lamp onto a view: where it is seen there, else as one more side of it; in the size that
   * it has elsewhere.
   */
  public static Project put(Project project, String lamp, View view, double x, double y) {
    return each(project, List.of(lamp), l -> put(l, view, grain(x), grain(y)));
  }

  private static Lamp put(Lamp lamp, View view, double x, double y) {
    if (lamp.placeIn(view).isPresent()) {
      return lamp.withPlacesIn(view, at -> Optional.of(moved(at, x, y)));
    }
    Place like = lamp.place().orElseGet(() -> new Place(view, x, y, Place.DEFAULT_SIZE));
    Place here = moved(Place.VIEW.with(like, view), x, y);
    return lamp.place().isEmpty()
        ? Lamp.PLACE.with(lamp, Optional.of(here))
        : Lamp.ALSO_AT.with(lamp, Stream.concat(lamp.alsoAt().stream(), Stream.of(here)).toList());
  }

  /** Moves lamps on a drawing; none leaves it. */
  public static Project move(
      Project project, Collection<String> lamps, View view, double byX, double byY) {
    return each(
        project,
        lamps,
        l ->
            l.withPlacesIn(
                view, at -> Optional.of(moved(at, grain(at.x() + byX), grain(at.y() + byY)))));
  }

  /** Makes lamps larger or smaller on a drawing. */
  public static Project resize(
      Project project, Collection<String> lamps, View view, double factor) {
    return each(
        project,
        lamps,
        l ->
            l.withPlacesIn(
                view,
                at ->
                    Optional.of(
                        Place.SIZE.with(at, Math.max(LEAST_SIZE, grain(at.size() * factor))))));
  }

  /** Turns lamps on a drawing, clockwise. */
  public static Project turn(
      Project project, Collection<String> lamps, View view, double byDegrees) {
    return each(
        project,
        lamps,
        l ->
            l.withPlacesIn(
                view,
                at ->
                    Optional.of(
                        Place.TURN_DEGREES.with(
                            at, Math.IEEEremainder(at.turnDegrees() + byDegrees, TURN)))));
  }

  /** Takes lamps off a drawing. */
  public static Project remove(Project project, Collection<String> lamps, View view) {
    return each(project, lamps, l -> l.withPlacesIn(view, at -> Optional.empty()));
  }

  private static Place moved(Place place, double x, double y) {
    return Place.SHAPE.draft(place).set(Place.X, x).set(Place.Y, y).make();
  }

  /** Gives a view another picture, or the drawn outline. */
  public static Project picture(Project project, View view, Optional<String> file) {
    List<Picture> others = project.pictures().stream().filter(p -> p.view() != view).toList();
    if (file.isEmpty()) {
      return Project.PICTURES.with(project, others);
    }
    return Project.PICTURES.with(
        project, Stream.concat(others.stream(), Stream.of(new Picture(view, file.get()))).toList());
  }

  private static Project each(
      Project project, Collection<String> lamps, UnaryOperator<Lamp> change) {
    return Project.RIG.with(
        project,
        Rig.LAMPS.with(
            project.rig(),
            project.rig().lamps().stream()
                .map(l -> lamps.contains(l.id()) ? change.apply(l) : l)
                .toList()));
  }

  private static double grain(double share) {
    return Math.round(Math.max(0, Math.min(1, share)) * GRAIN) / GRAIN;
  }
}
