package lampwright.exporters.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.engine.render.FrameTable;

/**
 * The light of a scene on paper: for each lamp a row of screen colours for each of its pixels, from
 * the scene's start to its end. A frame is held until the next one; where several share a place, it
 * has the mean of their light.
 */
public final class LampStripes {
  private final List<List<ColourRow>> lamps;

  private LampStripes(List<List<ColourRow>> lamps) {
    this.lamps = lamps;
  }

  /** For each lamp in rig order its pixels from the first on. */
  public List<List<ColourRow>> lamps() {
    return lamps;
  }

  /**
   * Renders a scene once and finds its colours.
   *
   * @param width how many places each row has, from 1
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public static LampStripes of(FrameTable table, int width) {
    ScreenLight screen = ScreenLight.of(table.layout());
    int[][][] argb = new int[screen.lamps().size()][][];
    for (int lamp = 0; lamp < argb.length; lamp++) {
      argb[lamp] = new int[screen.pixels(lamp)][width];
    }
    MeanLight.walk(
        table,
        screen,
        width,
        (lamp, pixel, x, red, green, blue) -> argb[lamp][pixel][x] = Srgb8.argb(red, green, blue));
    List<List<ColourRow>> rows = new ArrayList<>();
    for (int[][] lamp : argb) {
      rows.add(Arrays.stream(lamp).map(ColourRow::new).toList());
    }
    return new LampStripes(List.copyOf(rows));
  }
}
