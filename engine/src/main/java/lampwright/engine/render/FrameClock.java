package lampwright.engine.render;

import java.math.BigDecimal;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/** Frame i of a scene represents exactly t = i / framesPerSecond seconds. */
final class FrameClock {
  private final Ratio frameMs;

  FrameClock(BigDecimal framesPerSecond) {
    this.frameMs = Ratio.of(1000).over(Ratio.of(framesPerSecond)).reduced();
  }

  /** Sets a moment to the time of a frame, from the start of the scene. */
  void timeMs(long frame, Moment into) {
    into.setProduct(frameMs, frame);
  }

  /** The first frame at or after a time. */
  long firstAtOrAfter(Ratio timeMs) {
    return timeMs.over(frameMs).ceiling();
  }

  /** The first frame after a time. */
  long firstAfter(Ratio timeMs) {
    return timeMs.over(frameMs).floor() + 1;
  }

  /** The time between two frames, in ms, exactly. */
  Ratio frame() {
    return frameMs;
  }

  /** The time between two frames, in ms. */
  double frameMs() {
    return frameMs.doubleValue();
  }
}
