package lampwright.app.workshop.model.live;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.app.live.LinkState;
import lampwright.app.live.LinkWords;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.words.Texts;

/** The bench link as a gauge. */
final class LinkGauge {
  private static final Texts TEXTS = Texts.of("live");

  private LinkGauge() {}

  /**
   * The gauge.
   *
   * @param carriesAll whether the link carries all frames of the scene on the bench
   * @param rate what it can carry, in words
   */
  static Gauge of(LinkState state, boolean carriesAll, String rate) {
    return new Gauge(
        BenchLink.GAUGE,
        reading(state),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        stateOf(state, carriesAll),
        LinkWords.of(state) + "\n" + rate,
        Optional.empty(),
        OptionalInt.empty());
  }

  private static String reading(LinkState state) {
    if (state instanceof LinkState.Live live) {
      return TEXTS.get(
          "gauge.live", String.format(Locale.ROOT, "%.0f", live.figures().framesPerSecond()));
    } else if (state instanceof LinkState.Failed) {
      return TEXTS.get("gauge.failed");
    } else if (state instanceof LinkState.Lost) {
      return TEXTS.get("gauge.lost");
    } else if (state instanceof LinkState.Asking) {
      return TEXTS.get("gauge.asking");
    }
    return TEXTS.get("gauge.closed");
  }

  private static Gauge.State stateOf(LinkState state, boolean carriesAll) {
    if (state instanceof LinkState.Live) {
      return carriesAll ? Gauge.State.FITS : Gauge.State.NEAR;
    } else if (state instanceof LinkState.Failed) {
      return Gauge.State.OVER;
    }
    return state instanceof LinkState.Lost ? Gauge.State.NEAR : Gauge.State.OPEN;
  }
}
