package lampwright.engine.second;

import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;
import tools.jackson.databind.JsonNode;

/** Rise and fall of lamps from frame to frame. */
final class Feel {
  private static final double LN_10 = 2.302585092994046;

  private final Rig rig;
  private final double frameMs;

  Feel(Rig rig, BigFraction framesPerSecond) {
    this.rig = rig;
    frameMs = Exact.near(new BigFraction(1000).divide(framesPerSecond));
  }

  /** Lets the drives of all frames follow. */
  void follow(List<double[][]> frames, boolean loops) {
    for (Rig.Lamp lamp : rig.lamps.values()) {
      lamp.feel()
          .ifPresent(
              feel -> {
                double up = share(feel, "riseMs");
                double down = share(feel, "fallMs");
                lamp.packages().forEach(k -> follow(frames, k, up, down, loops));
              });
    }
  }

  private double share(JsonNode feel, String name) {
    double ms = Fields.number(feel, name, 0);
    return ms == 0 ? 1 : 1 - StrictMath.exp(-frameMs * LN_10 / ms);
  }

  private static void follow(
      List<double[][]> frames, int k, double up, double down, boolean loops) {
    for (int i = 0; i < 4; i++) {
      double y = 0;
      if (loops) {
        for (double[][] frame : frames) {
          y = y + (frame[k][i] - y) * (frame[k][i] > y ? up : down);
        }
      }
      for (double[][] frame : frames) {
        y = y + (frame[k][i] - y) * (frame[k][i] > y ? up : down);
        frame[k][i] = y;
      }
    }
  }
}
