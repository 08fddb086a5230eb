package lampwright.app.workshop.edit;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;

/** The lamp on the other side of the model, by its name or id, and its place in the mirror. */
public final class Partners {
  private static final List<List<String>> SIDES =
      List.of(List.of("left", "right"), List.of("port", "starboard"), List.of("l", "r"));

  private Partners() {}

  /** The lamp whose name or id is that of this one with left and right exchanged. */
  public static Optional<Lamp> of(Rig rig, Lamp lamp) {
    for (List<String> side : SIDES) {
      String id = exchanged(lamp.id(), side);
      String name = exchanged(lamp.name(), side);
      Optional<Lamp> found =
          rig.lamps().stream()
              .filter(other -> !other.id().equals(lamp.id()))
              .filter(
                  other ->
                      (!id.equals(lamp.id()) && other.id().equals(id))
                          || (!name.equalsIgnoreCase(lamp.name())
                              && other.name().equalsIgnoreCase(name)))
              .findFirst();
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static String exchanged(String text, List<String> side) {
    Matcher word =
        Pattern.compile("(?i)(?<![a-z])(" + side.get(0) + "|" + side.get(1) + ")(?![a-z])")
            .matcher(text);
    return word.replaceAll(
        m -> m.group().toLowerCase(Locale.ROOT).equals(side.get(0)) ? side.get(1) : side.get(0));
  }

  /**
   * Places the partners of lamps where a mirror through the middle of the model shows them. Seen
   * from the side a lamp and its partner are one behind the other: there a partner that is seen on
   * that side as well, such as a beacon on the roof, gets the same place, and one that is hidden by
   * the model none.
   */
  public static Project mirrored(Project project, Iterable<String> lamps, View view) {
    Project changed = project;
    for (String id : lamps) {
      Optional<Lamp> lamp = changed.rig().lamp(id);
      Optional<Place> place = lamp.flatMap(l -> l.placeIn(view));
      Rig rig = changed.rig();
      Optional<Lamp> partner = lamp.flatMap(l -> of(rig, l));
      boolean seen = view != View.SIDE || partner.flatMap(other -> other.placeIn(view)).isPresent();
      if (place.isPresent() && partner.isPresent() && seen) {
        Place there = mirrored(place.get());
        changed = PlaceEdits.put(changed, partner.get().id(), view, there.x(), there.y());
        changed =
            LampEdits.change(
                changed, partner.get().id(), l -> l.withPlacesIn(view, at -> Optional.of(there)));
      }
    }
    return changed;
  }

  // From above the model lies with its nose to the left: left and right are up and down.
  private static Place mirrored(Place place) {
    if (place.view() == View.SIDE) {
      return place;
    }
    boolean above = place.view() == View.TOP;
    double turn = above ? -place.turnDegrees() : 180 - place.turnDegrees();
    return Place.SHAPE
        .draft(place)
        .set(Place.X, above ? place.x() : rounded(1 - place.x()))
        .set(Place.Y, above ? rounded(1 - place.y()) : place.y())
        .set(Place.TURN_DEGREES, place.turnDegrees() == 0 ? 0 : Math.IEEEremainder(turn, 360))
        .make();
  }

  private static double rounded(double share) {
    return Math.round(share * 1e6) / 1e6;
  }
}
