package lampwright.engine.second;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;
import tools.jackson.databind.JsonNode;

/**
 * A renderer after docs/rendering.md and docs/formats.md alone, written without a look at the
 * program's. It knows valid projects only, and takes its time.
 */
final class SecondRenderer {
  private final Rig rig;

  SecondRenderer(JsonNode project) {
    rig = new Rig(project);
  }

  /** The bytes of all frames, 0 to 255. */
  List<int[]> table(JsonNode scene) {
    BigFraction framesPerSecond = Exact.field(scene, "framesPerSecond", "50");
    BigFraction frameMs = new BigFraction(1000).divide(framesPerSecond);
    BigFraction length = Exact.field(scene, "lengthMs", "0");
    int count =
        Math.max(1, Exact.floor(length.divide(frameMs).add(BigFraction.ONE_HALF)).intValueExact());
    Blending blending = new Blending(rig, scene);
    List<double[][]> frames = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      frames.add(blending.at(frameMs.multiply(i)));
    }
    new Feel(rig, framesPerSecond).follow(frames, Fields.flag(scene, "loop", true));
    boolean dithered = Fields.text(scene, "dither", "off").equals("temporal");
    return new Bytes(rig, dithered).of(frames);
  }
}
