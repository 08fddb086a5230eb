package lampwright.exporters.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.engine.render.FrameCursor;
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
    int count = screen.lamps().size();
    int[][][] argb = new int[count][][];
    float[][] sums = new float[count][];
    for (int lamp = 0; lamp < count; lamp++) {
      argb[lamp] = new int[screen.pixels(lamp)][width];
      sums[lamp] = new float[3 * screen.pixels(lamp)];
    }
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    long frames = table.frameCount();
    for (int x = 0; x < width; x++) {
      long first = x * frames / width;
      long end = Math.max(first + 1, ((x + 1) * frames + width - 1) / width);
      for (long f = first; f < end; f++) {
        // The last frame of a place is often the first of the next.
        if (f >= cursor.position()) {
          cursor.next(frame);
        }
        for (int lamp = 0; lamp < count; lamp++) {
          for (int pixel = 0; pixel < argb[lamp].length; pixel++) {
            screen.addPixel(frame, lamp, pixel, sums[lamp], 3 * pixel);
          }
        }
      }
      float share = 1f / (end - first);
      for (int lamp = 0; lamp < count; lamp++) {
        float[] sum = sums[lamp];
        for (int pixel = 0; pixel < argb[lamp].length; pixel++) {
          argb[lamp][pixel][x] =
              Srgb8.argb(
                  share * sum[3 * pixel], share * sum[3 * pixel + 1], share * sum[3 * pixel + 2]);
        }
        Arrays.fill(sum, 0);
      }
    }
    List<List<ColourRow>> rows = new ArrayList<>();
    for (int[][] lamp : argb) {
      rows.add(Arrays.stream(lamp).map(ColourRow::new).toList());
    }
    return new LampStripes(List.copyOf(rows));
  }
}
