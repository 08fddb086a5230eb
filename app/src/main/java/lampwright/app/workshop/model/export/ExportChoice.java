package lampwright.app.workshop.model.export;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;

/** A scene or a format that may be taken along. */
public final class ExportChoice {
  private final String key;
  private final BooleanProperty chosen;

  ExportChoice(String key, boolean chosen) {
    this.key = key;
    this.chosen = new SimpleBooleanProperty(chosen);
  }

  /** The id of the scene, or the key of the format. */
  public String key() {
    return key;
  }

  /** Whether it is taken along. */
  public BooleanProperty chosenProperty() {
    return chosen;
  }

  public boolean chosen() {
    return chosen.get();
  }
}
