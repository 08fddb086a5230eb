package lampwright.app.workshop.model;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.engine.rig.View;

/** What the drawing of the model and the ribbons beside it must agree on. */
public final class DrawingSheet {
  /**
   * A ribbon in sight, for the leader line that ends at it.
   *
   * @param lamp id
   * @param centreY of the ribbon, in pixels from the top of the pane that shows the ribbons
   */
  public record Row(String lamp, double centreY) {}

  private final ObjectProperty<View> view = new SimpleObjectProperty<>(View.SIDE);
  private final BooleanProperty night = new SimpleBooleanProperty(false);
  private final DoubleProperty shift = new SimpleDoubleProperty();
  private final ObjectProperty<List<Row>> rows = new SimpleObjectProperty<>(List.of());

  private final ObjectProperty<LampSigns> signs = new SimpleObjectProperty<>(LampSigns.NONE);
  private final ColourDropper dropper = new ColourDropper();
  private final LampPicker picker = new LampPicker();
  private final ObjectProperty<Optional<LiveFrame>> live =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Function<String, Optional<String>>> notes =
      new SimpleObjectProperty<>(lamp -> Optional.empty());

  /** What is drawn in place of the scene's frame, while there is something. */
  public ObjectProperty<Optional<LiveFrame>> liveProperty() {
    return live;
  }

  /** What there is to report of a lamp, by its id. */
  public ObjectProperty<Function<String, Optional<String>>> notesProperty() {
    return notes;
  }

  /** Which lamps are muted, solo or locked. */
  public ObjectProperty<LampSigns> signsProperty() {
    return signs;
  }

  public LampSigns signs() {
    return signs.get();
  }

  /** Takes a colour from what is clicked in the drawing or the ribbons. */
  public ColourDropper dropper() {
    return dropper;
  }

  /** Takes lamps that are clicked in the drawing. */
  public LampPicker picker() {
    return picker;
  }

  /** How far the ribbons' pane begins below the drawing's, in pixels. */
  public DoubleProperty shiftProperty() {
    return shift;
  }

  /** The side from which the model is drawn now. */
  public ObjectProperty<View> viewProperty() {
    return view;
  }

  /** Whether it is drawn at night, or else by day. */
  public BooleanProperty nightProperty() {
    return night;
  }

  /** The ribbons in sight, from the top; set by the ribbons, read by the leader lines. */
  public ObjectProperty<List<Row>> rowsProperty() {
    return rows;
  }
}
