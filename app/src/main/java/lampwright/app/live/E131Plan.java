package lampwright.app.live;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;

/**
 * Which universe carries what of a frame. Each chain begins a universe of its own, so that a longer
 * chain moves no other within its universe; no pixel is cut in two. The driver outputs come last.
 * The slots are the frame's bytes in wire order.
 *
 * @param slices in the order of their universes, which follow one another
 */
public record E131Plan(List<E131Slice> slices) {
  /** The greatest number of a universe for data (ANSI E1.31-2018, 6.2.7). */
  public static final int MOST_UNIVERSE = 63_999;

  public E131Plan {
    slices = List.copyOf(slices);
  }

  /**
   * The plan of a rig.
   *
   * @param first the universe of its first chain
   * @throws IllegalArgumentException if the universes do not suffice
   */
  public static E131Plan of(Rig rig, int first) {
    FrameLayout layout = new FrameLayout(rig);
    List<E131Slice> slices = new ArrayList<>();
    for (int c = 0; c < rig.chains().size(); c++) {
      Chain chain = rig.chains().get(c);
      int size = chain.order().size();
      int most = E131Packet.MOST_SLOTS / size;
      for (int pixel = 0; pixel < chain.pixels(); pixel += most) {
        int count = Math.min(most, chain.pixels() - pixel);
        slices.add(
            new E131Slice(
                first + slices.size(),
                layout.chainOffset(c) + pixel * size,
                count * size,
                chain.id(),
                pixel,
                count));
      }
    }
    int outputs = rig.outputs().size();
    if (outputs > 0) {
      slices.add(
          new E131Slice(first + slices.size(), layout.outputsOffset(), outputs, "", 0, outputs));
    }
    Checks.require("first universe", first, 1, MOST_UNIVERSE + 1.0 - slices.size());
    return new E131Plan(slices);
  }
}
