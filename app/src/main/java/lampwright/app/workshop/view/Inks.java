package lampwright.app.workshop.view;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import javafx.scene.layout.Background;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;

/**
 * The colours that a drawn pane takes from the stylesheet. Each is the background of an unseen
 * region with the style class {@code ink-NAME}.
 *
 * @param <E> the names
 */
public final class Inks<E extends Enum<E>> extends Pane {
  private final Map<E, Region> regions;

  /**
   * @param names all of them
   * @param changed called when a colour has changed, as between day and night
   */
  public Inks(Class<E> names, Runnable changed) {
    regions = new EnumMap<>(names);
    setVisible(false);
    setManaged(false);
    for (E name : names.getEnumConstants()) {
      Region region = new Region();
      region.getStyleClass().add("ink-" + name.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      region.backgroundProperty().addListener((of, before, now) -> changed.run());
      regions.put(name, region);
      getChildren().add(region);
    }
  }

  /** A colour; transparent while no stylesheet gave it. */
  public Paint of(E name) {
    Region region = regions.get(name);
    Background background = region == null ? null : region.getBackground();
    return background == null || background.getFills().isEmpty()
        ? Color.TRANSPARENT
        : background.getFills().get(0).getFill();
  }
}
