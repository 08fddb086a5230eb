package lampwright.app.workshop.model.drawing;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.SimpleIntegerProperty;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.LateValue;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.rig.View;

/**
 * How much the light of the drawing is brightened, for each view by itself, and a meter of it: the
 * brightest pixel of a lamp as a share of the screen's white, now and at most since the view or the
 * project changed.
 */
public final class Exposures {
  /** The least step: a quarter of the light. */
  public static final int LEAST = -2;

  /** The greatest: sixteen times the light. */
  public static final int MOST = 4;

  private final Texts texts = Texts.of("drawing");
  private final DrawingSheet sheet;
  private final Map<View, Integer> ofView = new EnumMap<>(View.class);
  private final IntegerProperty doublings = new SimpleIntegerProperty();
  private final LateValue<Gauge> meter = new LateValue<>(this::gauge);
  // As if exposed once.
  private double now;
  private double peak;

  Exposures(Bench bench, DrawingSheet sheet) {
    this.sheet = sheet;
    doublings.addListener(
        (of, before, value) -> {
          ofView.put(sheet.viewProperty().get(), value.intValue());
          meter.changed();
        });
    sheet
        .viewProperty()
        .addListener(
            (of, before, view) -> {
              forget();
              doublings.set(ofView.getOrDefault(view, 0));
            });
    bench.watch(BenchState::project, (before, project) -> forget());
    bench.watch(state -> state.selection().scene(), (before, scene) -> forget());
  }

  /** Doublings of the light in the view that is shown, {@link #LEAST} to {@link #MOST}. */
  public IntegerProperty doublingsProperty() {
    return doublings;
  }

  /** By what all light is multiplied. */
  public float factor() {
    return (float) Math.pow(2, doublings.get());
  }

  /** More or less light, as far as it goes. */
  public void step(int by) {
    doublings.set(Math.max(LEAST, Math.min(MOST, doublings.get() + by)));
  }

  /** Brightest pixel of the view: of the frame that is shown, and the most so far. */
  public ReadOnlyObjectProperty<Gauge> meterProperty() {
    return meter;
  }

  /**
   * A frame of a view was painted.
   *
   * @param brightest of its pixels, as a share of the screen's white
   * @param exposed by what its light was multiplied
   */
  public void painted(View view, double brightest, double exposed) {
    if (view == sheet.viewProperty().get()) {
      now = brightest / exposed;
      peak = Math.max(peak, now);
      meter.changed();
    }
  }

  /** Takes the most light with which the brightest pixel so far is not above the screen's white. */
  public void byMeter() {
    if (peak > 0) {
      // A hair of room: what is exactly white is not above it.
      int fitting = (int) Math.floor(-Math.log(peak * 0.999) / Math.log(2));
      doublings.set(Math.max(LEAST, Math.min(MOST, fitting)));
    }
  }

  private void forget() {
    now = 0;
    peak = 0;
    meter.changed();
  }

  private Gauge gauge() {
    String times =
        texts.get(
            "exposure",
            doublings.get() >= 0
                ? Integer.toString(1 << doublings.get())
                : "1/" + (1 << -doublings.get()));
    double most = peak * factor();
    boolean known = peak > 0;
    return new Gauge(
        "exposure",
        times,
        known ? OptionalDouble.of(now * factor()) : OptionalDouble.empty(),
        known ? OptionalDouble.of(most) : OptionalDouble.empty(),
        !known ? Gauge.State.OPEN : most > 1.001 ? Gauge.State.OVER : Gauge.State.FITS,
        texts.get(
            known ? "meter.details" : "meter.dark",
            texts.get("view." + sheet.viewProperty().get().key()),
            percent(now * factor()),
            percent(most)),
        Optional.empty(),
        OptionalInt.empty());
  }

  private static String percent(double share) {
    return Long.toString(Math.round(share * 100));
  }
}
