package lampwright.engine.meter;

import java.util.List;
import lampwright.engine.render.FrameTable;

/** Watches the frames of a scene go by, and makes one figure of them. */
interface SceneMeter extends FrameGauge {
  /** The figure, once all frames have been shown. */
  SceneFigure figure();

  /** Every meter of this kind, in the order in which their figures are printed. */
  static List<SceneMeter> of(FrameTable table) {
    return List.of(new LeastCurrent(table));
  }
}
