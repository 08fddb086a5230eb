package lampwright.engine.render;

import java.math.BigDecimal;
import lampwright.engine.time.Ratio;

/** Frame i of a scene represents exactly t = i / framesPerSecond seconds. */
final class FrameClock {
  private final Ratio frameMs;

  FrameClock(BigDecimal framesPerSecond) {
    this.frameMs = Ratio.of(1000).over(Ratio.of(framesPerSecond)).reduced();
  }

  /** The time of a frame, from the start of the scene. */
  Ratio timeMs(long frame) {
    return frameMs.times(frame);
  }

  /** The first frame at or after a time. */
  long firstAtOrAfter(Ratio timeMs) {
    return timeMs.over(frameMs).ceiling();
  }

  /** The time between two frames, in ms. */
  double frameMs() {
    return frameMs.doubleValue();
  }
}
