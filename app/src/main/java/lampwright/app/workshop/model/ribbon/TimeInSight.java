package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.util.List;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Playhead;
import lampwright.engine.scene.Cue;

/** Which time of the scene the ribbons show, and where in it the playhead is. */
public final class TimeInSight {
  private final Bench bench;
  private final Playhead playhead;
  private final ObjectProperty<TimeAxis> axis = new SimpleObjectProperty<>(new TimeAxis(0, 5));
  private final BooleanProperty following = new SimpleBooleanProperty(true);
  private double width = 600;

  TimeInSight(Bench bench, Playhead playhead) {
    this.bench = bench;
    this.playhead = playhead;
    bench.watch(BenchState::frame, (before, now) -> follow());
  }

  /** Which time is in sight. */
  public ObjectProperty<TimeAxis> axisProperty() {
    return axis;
  }

  public TimeAxis axis() {
    return axis.get();
  }

  /** Whether the time in sight follows the playhead. */
  public BooleanProperty followingProperty() {
    return following;
  }

  /** Tells how wide the pane of the rows is, in pixels. */
  void resize(double newWidth) {
    width = newWidth;
  }

  double width() {
    return width;
  }

  /** Shows the whole scene. */
  public void showAll() {
    bench.scene().ifPresent(s -> axis.set(TimeAxis.fitting(0, s.lengthMs().doubleValue(), width)));
  }

  /** Shows the selected cues, or the whole scene if none are. */
  public void showChosen() {
    List<Cue> cues = bench.cues();
    if (cues.isEmpty()) {
      showAll();
      return;
    }
    double from = cues.stream().mapToDouble(c -> c.startMs().doubleValue()).min().orElse(0);
    double to = cues.stream().mapToDouble(c -> c.endMs().doubleValue()).max().orElse(1);
    double room = (to - from) / 10;
    axis.set(TimeAxis.fitting(Math.max(0, from - room), to + room, width));
  }

  /** Looks closer (factor above 1) or from further away, around the playhead if it is in sight. */
  public void zoom(double factor) {
    double x = playheadX();
    axis.set(axis().zoomed(factor, x >= 0 && x <= width ? x : width / 2));
  }

  /** The time of the frame that is shown. */
  public BigDecimal playheadMs() {
    return bench.scene().map(s -> CueEdits.frameMs(s, playhead.frame())).orElse(BigDecimal.ZERO);
  }

  /** Where the playhead is in the pane of the rows, in pixels; outside of it if out of sight. */
  public double playheadX() {
    return axis().x(playheadMs().doubleValue());
  }

  /** Goes to the frame that is shown at a time. */
  public void scrub(double ms) {
    bench
        .scene()
        .ifPresent(s -> playhead.go((int) (ms * s.framesPerSecond().doubleValue() / 1000 + 1e-9)));
  }

  /** The frame whose beginning is nearest to a time. */
  public int nearestFrame(double ms) {
    return bench.scene().map(s -> (int) CueEdits.nearestFrame(s, BigDecimal.valueOf(ms))).orElse(0);
  }

  private void follow() {
    double x = playheadX();
    if (following.get() && (x < 0 || x > width)) {
      axis.set(new TimeAxis(playheadMs().doubleValue(), axis().msPerPixel()));
    }
  }
}
