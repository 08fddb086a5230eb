package lampwright.engine.rig;

import lampwright.engine.field.Field;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;

/**
 * Neighbouring pixels of one chain.
 *
 * @param chain the chain's id
 * @param from the first pixel, counted from 0 at the data input
 * @param count how many pixels, at least 1
 */
public record PixelRun(String chain, int from, int count) {
  public static final Shape<PixelRun> SHAPE =
      Shape.of(
          "pixels",
          PixelRun.class,
          Field.required("chain", ReferenceType.to("rig.chains"), PixelRun::chain, ""),
          Field.usual(
              "from", WholeType.ofInt(Unit.NONE, 0, Chain.MAX_PIXELS - 1), PixelRun::from, 0),
          Field.usual(
              "count", WholeType.ofInt(Unit.NONE, 1, Chain.MAX_PIXELS), PixelRun::count, 1));

  public PixelRun {
    SHAPE.check(chain, from, count).done();
  }

  /** The pixel after the last. */
  public int end() {
    return from + count;
  }
}
