package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.engine.scene.Scene;

/** What edges are drawn to while they are dragged. */
public final class Snapping {
  /** How near a mark draws an edge to it, in pixels. */
  private static final double REACH = 7;

  private final Bench bench;
  private final TimeInSight time;
  private final BooleanProperty on = new SimpleBooleanProperty(true);
  private final ObjectProperty<Optional<BigDecimal>> beatMs =
      new SimpleObjectProperty<>(Optional.empty());

  Snapping(Bench bench, TimeInSight time) {
    this.bench = bench;
    this.time = time;
  }

  /** Whether edges are drawn to frames and marks. */
  public BooleanProperty onProperty() {
    return on;
  }

  /** Time between the beats that edges are drawn to; off if empty. */
  public ObjectProperty<Optional<BigDecimal>> beatMsProperty() {
    return beatMs;
  }

  /** What edges are drawn to while these cues move. */
  public Snap of(Collection<CueRef> moving, boolean free) {
    Scene scene = bench.scene().orElseThrow();
    return free || !on.get()
        ? Snap.off(scene)
        : Snap.on(scene, moving, time.playheadMs(), beatMs.get());
  }

  /** Where an edge at a time goes that belongs to no cue. */
  public BigDecimal edge(double ms, boolean free) {
    return of(List.of(), free).edge(ms, reachMs());
  }

  /** How near a mark draws an edge to it, ms. */
  public double reachMs() {
    return REACH * time.axis().msPerPixel();
  }
}
