package lampwright.exporters.picture;

import java.util.Arrays;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;

/**
 * The light of a scene from its start to its end on so many places: a frame is held until the next
 * one; where several share a place, it has the mean of their light.
 */
final class MeanLight {
  /** Hears the light of each pixel at each place, places in rising order. */
  @FunctionalInterface
  interface Watcher {
    /**
     * One pixel at one place.
     *
     * @param lamp in rig order
     * @param pixel of the lamp, from 0
     * @param x the place, from 0
     * @param red linear sRGB, as {@link ScreenLight#addPixel} has it
     */
    void light(int lamp, int pixel, int x, float red, float green, float blue);
  }

  private MeanLight() {}

  /**
   * Renders a scene once.
   *
   * @param width how many places, from 1
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  static void walk(FrameTable table, ScreenLight screen, int width, Watcher watcher) {
    int count = screen.lamps().size();
    float[][] sums = new float[count][];
    for (int lamp = 0; lamp < count; lamp++) {
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
          for (int pixel = 0; pixel < screen.pixels(lamp); pixel++) {
            screen.addPixel(frame, lamp, pixel, sums[lamp], 3 * pixel);
          }
        }
      }
      float share = 1f / (end - first);
      for (int lamp = 0; lamp < count; lamp++) {
        float[] sum = sums[lamp];
        for (int pixel = 0; pixel < screen.pixels(lamp); pixel++) {
          int at = 3 * pixel;
          watcher.light(lamp, pixel, x, share * sum[at], share * sum[at + 1], share * sum[at + 2]);
        }
        Arrays.fill(sum, 0);
      }
    }
  }
}
