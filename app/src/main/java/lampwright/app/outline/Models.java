package lampwright.app.outline;

import com.google.common.base.Splitter;
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
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.View;

/** The drawings of each kind of model. They are read once. */
public final class Models {
  private static final Map<String, Outline> READ = new ConcurrentHashMap<>();

  private Models() {}

  /** The name of a kind for people. */
  public static String title(ModelKind kind) {
    return text("kind." + kind.key());
  }

  /** Other words for a kind, such as {@code tug}; no word is that of two kinds. */
  public static List<String> otherWords(ModelKind kind) {
    return Splitter.on(' ').splitToList(text("words." + kind.key()));
  }

  /** The kind that a word means: its key, or one of its other words. */
  public static Optional<ModelKind> find(String word) {
    return Arrays.stream(ModelKind.values())
        .filter(kind -> kind.key().equals(word) || otherWords(kind).contains(word))
        .findFirst();
  }

  private static String text(String key) {
    return ResourceBundle.getBundle(
            "lampwright.app.outline.outline", Locale.getDefault(), Models.class.getModule())
        .getString(key);
  }

  /** The side that shows most of a model: of vehicles the left, of houses the front. */
  public static View mainView(ModelKind kind) {
    return switch (kind) {
      case HOUSE, HARBOUR_FRONT -> View.FRONT;
      case ROAD_TRACTOR,
          RECOVERY_VEHICLE,
          FIRE_CARRIER,
          FARM_TRACTOR,
          CAR,
          LAUNCH,
          MOBILE_CRANE,
          LOCOMOTIVE,
          AIRCRAFT ->
          View.SIDE;
    };
  }

  /**
   * The drawing of a side. A vehicle faces left in the side view and from above, so that its left
   * is below there; from the front its left is at the right.
   */
  public static Outline outline(ModelKind kind, View view) {
    return READ.computeIfAbsent(kind.key() + "-" + view.key() + ".svg", Models::read);
  }

  private static Outline read(String name) {
    try (InputStream file = Objects.requireNonNull(Models.class.getResourceAsStream(name))) {
      return OutlineReader.read(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
