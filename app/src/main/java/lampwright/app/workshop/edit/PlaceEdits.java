package lampwright.app.workshop.edit;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
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

  private PlaceEdits() {}

  /** Puts a lamp onto a view, in its old size if it had one. */
  public static Project put(Project project, String lamp, View view, double x, double y) {
    return each(
        project,
        List.of(lamp),
        l ->
            Lamp.PLACE.with(
                l,
                Optional.of(
                    Place.SHAPE
                        .draft(l.place().orElseGet(() -> new Place(view, x, y, Place.DEFAULT_SIZE)))
                        .set(Place.VIEW, view)
                        .set(Place.X, grain(x))
                        .set(Place.Y, grain(y))
                        .make())));
  }

  /** Moves lamps on their drawings; none leaves its drawing. */
  public static Project move(Project project, Collection<String> lamps, double byX, double byY) {
    return each(
        project,
        lamps,
        l ->
            Lamp.PLACE.with(
                l,
                l.place()
                    .map(
                        p ->
                            Place.SHAPE
                                .draft(p)
                                .set(Place.X, grain(p.x() + byX))
                                .set(Place.Y, grain(p.y() + byY))
                                .make())));
  }

  /** Makes lamps larger or smaller on their drawings. */
  public static Project resize(Project project, Collection<String> lamps, double factor) {
    return each(
        project,
        lamps,
        l ->
            Lamp.PLACE.with(
                l,
                l.place()
                    .map(p -> Place.SIZE.with(p, Math.max(LEAST_SIZE, grain(p.size() * factor))))));
  }

  /** Takes lamps off their drawings. */
  public static Project remove(Project project, Collection<String> lamps) {
    return each(project, lamps, l -> Lamp.PLACE.with(l, Optional.empty()));
  }

  /** Gives a view another picture, or the drawn outline. */
  public static Project picture(Project project, View view, Optional<String> file) {
    List<Picture> others = project.pictures().stream().filter(p -> p.view() != view).toList();
    if (file.isEmpty()) {
      return Project.PICTURES.with(project, others);
    }
    return Project.PICTURES.with(
        project,
        java.util.stream.Stream.concat(
                others.stream(), java.util.stream.Stream.of(new Picture(view, file.get())))
            .toList());
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
