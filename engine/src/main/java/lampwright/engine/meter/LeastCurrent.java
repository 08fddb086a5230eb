package lampwright.engine.meter;

import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameTable;

/**
 * The current of the darkest frame. Many USB power banks switch off when less than some 50 to 100
 * mA flows for a while (common practice, from memory; the bank's data sheet has its figure).
 */
final class LeastCurrent implements SceneMeter {
  private final FrameCurrent current;
  private double least = Double.MAX_VALUE;

  LeastCurrent(FrameTable table) {
    current = new FrameCurrent(table.layout());
  }

  @Override
  public void frame(int frame, byte[] bytes) {
    least = Math.min(least, current.milliamps(bytes));
  }

  @Override
  public SceneFigure figure() {
    return new SceneFigure(
        "leastMilliamps",
        "Least",
        least,
        "mA",
        "in the darkest frame; many power banks switch off below 50 to 100 mA");
  }
}
