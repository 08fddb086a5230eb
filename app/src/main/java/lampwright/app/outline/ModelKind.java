package lampwright.app.outline;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;
import lampwright.engine.rig.View;

/** A kind of model that has drawings and usual lamps. */
public enum ModelKind {
  ROAD_TRACTOR("road-tractor", View.SIDE),
  RECOVERY_VEHICLE("recovery-vehicle", View.SIDE),
  FIRE_CARRIER("fire-carrier", View.SIDE),
  FARM_TRACTOR("farm-tractor", View.SIDE),
  CAR("car", View.SIDE),
  LAUNCH("launch", View.SIDE),
  MOBILE_CRANE("mobile-crane", View.SIDE),
  LOCOMOTIVE("locomotive", View.SIDE),
  AIRCRAFT("aircraft", View.SIDE),
  HOUSE("house", View.FRONT),
  HARBOUR_FRONT("harbour-front", View.FRONT);

  private final String key;
  private final View mainView;
  private final Map<View, Outline> outlines = new ConcurrentHashMap<>();

  ModelKind(String key, View mainView) {
    this.key = key;
    this.mainView = mainView;
  }

  /** The word for this in files and on the command line. */
  public String key() {
    return key;
  }

  /** The name for people. */
  public String title() {
    return ResourceBundle.getBundle(
            "lampwright.app.outline.outline", Locale.getDefault(), ModelKind.class.getModule())
        .getString("kind." + key);
  }

  /** The side that shows most of it: of vehicles the left, of houses the front. */
  public View mainView() {
    return mainView;
  }

  /**
   * The drawing of a side. A vehicle faces left in the side view and from above, so that its left
   * is below there; from the front its left is at the right.
   */
  public Outline outline(View view) {
    return outlines.computeIfAbsent(view, this::read);
  }

  /** The lamps that such a model usually has, in the order in which they are offered. */
  public List<UsualLamp> usualLamps() {
    return UsualLamps.of(this);
  }

  private Outline read(View view) {
    String name = key + "-" + view.key() + ".svg";
    try (InputStream file = Objects.requireNonNull(ModelKind.class.getResourceAsStream(name))) {
      return OutlineReader.read(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** The kind with this word. */
  public static Optional<ModelKind> of(String key) {
    return Arrays.stream(values()).filter(kind -> kind.key.equals(key)).findFirst();
  }
}
