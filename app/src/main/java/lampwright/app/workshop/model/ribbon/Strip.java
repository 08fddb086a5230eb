package lampwright.app.workshop.model.ribbon;

import java.util.Arrays;
import java.util.List;
import lampwright.app.workshop.model.SceneLight;
import lampwright.engine.render.FrameStore;
import lampwright.exporters.picture.ColourRow;
import lampwright.exporters.picture.ScreenLight;
import lampwright.exporters.picture.Srgb8;

/**
 * The light of one lamp, or of a group, over a stretch of time: a stripe for each of its pixels, or
 * for some of them together where it has many; one screen colour for each pixel of the screen's
 * width.
 */
public final class Strip {
  /** Frames that are looked at for one pixel; more would not be seen. */
  private static final int MOST_SAMPLES = 8;

  /** Most stripes: with more, one would be lower than a line. */
  private static final int MOST_STRIPES = 16;

  private final TimeAxis axis;
  private final List<ColourRow> stripes;
  private final int[][] duties;

  private Strip(TimeAxis axis, int[][] argb, int[][] duties) {
    this.axis = axis;
    this.stripes = Arrays.stream(argb).map(ColourRow::new).toList();
    this.duties = duties;
  }

  /** How many stripes a lamp has. */
  public static int stripes(int pixels) {
    return Math.min(MOST_STRIPES, pixels);
  }

  /** The time that it shows. */
  public TimeAxis axis() {
    return axis;
  }

  /** Pixels from left to right. */
  public int width() {
    return stripes.get(0).size();
  }

  /**
   * The stripes from the first pixel on, at least one; colours from the left, 0, transparent, past
   * the scene's end or where no light is known.
   */
  public List<ColourRow> stripes() {
    return stripes;
  }

  /** For how many of the lamp's bytes there are duties: none unless they were asked for. */
  public int curves() {
    return duties.length;
  }

  /** The duty of a byte at a pixel, 0 to 255; -1 where it is unknown. */
  public int duty(int curve, int x) {
    return duties[curve][x];
  }

  /**
   * Paints strips of several lamps at once, so that each frame is read once.
   *
   * @param lamps for each strip, indices in the rig of the lamps that it shows as one
   * @param withDuties for which of them duties are wanted
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public static Strip[] paint(
      SceneLight light, TimeAxis axis, int width, List<List<Integer>> lamps, boolean[] withDuties) {
    ScreenLight screen = light.screen();
    FrameStore frames = light.frames();
    double framesPerMs = frames.table().framesPerSecond() / 1000;
    byte[] frame = new byte[frames.table().layout().bytes()];
    Stripes[] all = new Stripes[lamps.size()];
    int[][][] duties = new int[lamps.size()][][];
    int[][] columns = new int[lamps.size()][];
    for (int i = 0; i < lamps.size(); i++) {
      all[i] = new Stripes(screen, lamps.get(i), width);
      columns[i] = withDuties[i] ? columns(screen, lamps.get(i).get(0)) : new int[0];
      duties[i] = new int[columns[i].length][width];
    }
    for (int x = 0; x < width; x++) {
      if (Thread.currentThread().isInterrupted()) {
        throw new java.util.concurrent.CancellationException("painting was interrupted");
      }
      // A frame is held until the next one.
      long first = (long) Math.floor(axis.ms(x) * framesPerMs + 1e-9);
      long last = Math.max(first + 1, (long) Math.ceil(axis.ms(x + 1) * framesPerMs - 1e-9));
      int samples = (int) Math.min(MOST_SAMPLES, last - first);
      int read = 0;
      for (int s = 0; s < samples; s++) {
        long at = first + (last - first) * s / samples;
        if (at < frames.frameCount() && frames.has((int) at) && frames.read((int) at, frame)) {
          read++;
          for (Stripes of : all) {
            of.add(screen, frame);
          }
        }
      }
      for (int i = 0; i < lamps.size(); i++) {
        all[i].show(x, read);
        for (int c = 0; c < columns[i].length; c++) {
          duties[i][c][x] = read == 0 ? -1 : frame[columns[i][c]] & 0xFF;
        }
      }
    }
    Strip[] strips = new Strip[lamps.size()];
    for (int i = 0; i < lamps.size(); i++) {
      strips[i] = new Strip(axis, all[i].argb, duties[i]);
    }
    return strips;
  }

  /** The stripes of one lamp, or of several as one, as they are painted. */
  private static final class Stripes {
    final int[][] argb;
    private final List<Integer> lamps;
    private final int pixels;
    private final int[] pixelsOf;
    private final float[] sums;

    Stripes(ScreenLight screen, List<Integer> lamps, int width) {
      this.lamps = lamps;
      this.pixels = lamps.stream().mapToInt(screen::pixels).sum();
      int count = stripes(pixels);
      argb = new int[count][width];
      sums = new float[3 * count];
      pixelsOf = new int[count];
      for (int pixel = 0; pixel < pixels; pixel++) {
        pixelsOf[stripe(pixel)]++;
      }
    }

    private int stripe(int pixel) {
      return pixel * argb.length / pixels;
    }

    void add(ScreenLight screen, byte[] frame) {
      int first = 0;
      for (int lamp : lamps) {
        int count = screen.pixels(lamp);
        for (int pixel = 0; pixel < count; pixel++) {
          screen.addPixel(frame, lamp, pixel, sums, 3 * stripe(first + pixel));
        }
        first += count;
      }
    }

    /** Shows the mean of the frames that were added, and begins anew. */
    void show(int x, int frames) {
      for (int i = 0; i < argb.length && frames > 0; i++) {
        float share = 1f / (frames * pixelsOf[i]);
        argb[i][x] =
            Srgb8.argb(share * sums[3 * i], share * sums[3 * i + 1], share * sums[3 * i + 2]);
      }
      Arrays.fill(sums, 0);
    }
  }

  private static int[] columns(ScreenLight screen, int lamp) {
    return java.util.stream.IntStream.range(0, screen.pixels(lamp))
        .flatMap(pixel -> java.util.Arrays.stream(screen.columns(lamp, pixel)))
        .toArray();
  }
}
