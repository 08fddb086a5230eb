package lampwright.app.workshop.view;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import javafx.scene.layout.Background;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;
import lampwright.exporters.picture.Ink;

/**
 * The colours that a drawn pane takes from the stylesheet. Each is the background of an unseen
 * region with the style class {@code ink-NAME}.
 *
 * @param <E> the names
 */
public final class Inks<E extends Enum<E>> extends Pane {
  private final Map<String, Region> regions = new HashMap<>();

  /**
   * @param names all of them
   * @param changed called when a colour has changed, as between day and night
   */
  public Inks(Class<E> names, Runnable changed) {
    setVisible(false);
    setManaged(false);
    for (E name : names.getEnumConstants()) {
      Region region = new Region();
      region.getStyleClass().add("ink-" + name.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      region.backgroundProperty().addListener((of, before, now) -> changed.run());
      regions.put(name.name(), region);
      getChildren().add(region);
    }
  }

  /** A colour; transparent while no stylesheet gave it. */
  public Paint of(E name) {
    return named(name.name());
  }

  /** The colour of a drawing's ink; transparent where no name is its. */
  public Paint paint(Ink ink) {
    return named(ink.name());
  }

  private Paint named(String name) {
    Region region = regions.get(name);
    Background background = region == null ? null : region.getBackground();
    return background == null || background.getFills().isEmpty()
        ? Color.TRANSPARENT
        : background.getFills().get(0).getFill();
  }
}
