package lampwright.app.outline;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.facts.Source;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.Place;

/**
 * A group of like lamps that a kind of model usually has.
 *
 * @param key unique among those of its kind; of the form of an id
 * @param title of the group, such as Beacons
 * @param single the name of one of them
 * @param function what each is on the vehicle
 * @param fitting what each is made of
 * @param count how many there are unless the builder says otherwise; 0 where the group is offered
 *     but not selected
 * @param stagger the share of the pattern's period, from 0 to below 1, by which each starts after
 *     the one before
 * @param pattern the light of each
 * @param source how surely real ones are known to be so
 * @param document where that is
 * @param each where each of them is, as many as there can be at most; the first ones come first
 */
public record UsualLamp(
    String key,
    String title,
    String single,
    LampFunction function,
    UsualFitting fitting,
    int count,
    BigDecimal stagger,
    Pattern pattern,
    Source source,
    String document,
    List<OneLamp> each) {

  /** What a lamp is made of. */
  public sealed interface UsualFitting {
    /** So many pixels of a chain. */
    record Pixels(int count) implements UsualFitting {
      public Pixels {
        if (count < 1 || count > 64) {
          throw new IllegalArgumentException("pixels: " + count + ": must be between 1 and 64");
        }
      }
    }

    /**
     * A plain LED on an output.
     *
     * @param forwardVolts common practice: 2 V of red and amber ones, 3.1 V of all others
     */
    record Led(Colour.Srgb colour, double forwardVolts) implements UsualFitting {}
  }

  /**
   * One of them.
   *
   * @param label which it is, such as {@code front left}; empty where there is only one
   * @param places where it is seen, at most one for each view, at least one in all; shares of the
   *     drawings of its kind
   */
  public record OneLamp(String label, List<Place> places) {
    public OneLamp {
      places = List.copyOf(places);
      long views = places.stream().map(Place::view).distinct().count();
      if (places.isEmpty() || views < places.size()) {
        throw new IllegalArgumentException(label + ": needs places, one for each view at most");
      }
    }
  }

  public UsualLamp {
    each = List.copyOf(each);
    if (each.isEmpty() || count < 0 || count > each.size()) {
      throw new IllegalArgumentException(
          key + ", count: " + count + ": must be between 0 and " + each.size());
    }
    if (stagger.signum() < 0 || stagger.compareTo(BigDecimal.ONE) >= 0) {
      throw new IllegalArgumentException(
          key + ", stagger: " + stagger.toPlainString() + ": must be at least 0 and less than 1");
    }
    if (each.stream().map(OneLamp::label).distinct().count() < each.size()) {
      throw new IllegalArgumentException(key + ": two have the same label");
    }
  }

  /** How many there can be at most. */
  public int greatest() {
    return each.size();
  }

  /**
   * The name of one of them.
   *
   * @param index from 0 to below {@link #greatest()}
   */
  public String name(int index) {
    String label = each.get(index).label();
    return label.isEmpty() ? single : single + ", " + label;
  }
}
