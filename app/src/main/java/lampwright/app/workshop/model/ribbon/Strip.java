package lampwright.app.workshop.model.ribbon;

import lampwright.app.picture.ColourRow;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.model.ScreenLight;
import lampwright.app.workshop.model.Srgb8;
import lampwright.engine.render.FrameStore;

/** The light of one lamp over a stretch of time, one screen colour a pixel. */
public final class Strip {
  /** Frames that are looked at for one pixel; more would not be seen. */
  private static final int MOST_SAMPLES = 8;

  private final TimeAxis axis;
  private final ColourRow colours;
  private final int[][] duties;

  private Strip(TimeAxis axis, int[] argb, int[][] duties) {
    this.axis = axis;
    this.colours = new ColourRow(argb);
    this.duties = duties;
  }

  /** The time that it shows. */
  public TimeAxis axis() {
    return axis;
  }

  /** Pixels from left to right. */
  public int width() {
    return colours.size();
  }

  /** Colours from the left; 0, transparent, past the scene's end or where no light is known. */
  public ColourRow colours() {
    return colours;
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
   * @param lamps indices in the rig
   * @param withDuties for which of them duties are wanted
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public static Strip[] paint(
      SceneLight light, TimeAxis axis, int width, int[] lamps, boolean[] withDuties) {
    ScreenLight screen = light.screen();
    FrameStore frames = light.frames();
    double framesPerMs = frames.table().framesPerSecond() / 1000;
    byte[] frame = new byte[frames.table().layout().bytes()];
    int[][] argb = new int[lamps.length][width];
    int[][][] duties = new int[lamps.length][][];
    int[][] columns = new int[lamps.length][];
    for (int i = 0; i < lamps.length; i++) {
      columns[i] = withDuties[i] ? columns(screen, lamps[i]) : new int[0];
      duties[i] = new int[columns[i].length][width];
    }
    float[] sums = new float[3 * lamps.length];
    for (int x = 0; x < width; x++) {
      if (Thread.currentThread().isInterrupted()) {
        throw new java.util.concurrent.CancellationException("painting was interrupted");
      }
      // A frame is held until the next one.
      long first = (long) Math.floor(axis.ms(x) * framesPerMs + 1e-9);
      long last = Math.max(first + 1, (long) Math.ceil(axis.ms(x + 1) * framesPerMs - 1e-9));
      int samples = (int) Math.min(MOST_SAMPLES, last - first);
      java.util.Arrays.fill(sums, 0);
      int read = 0;
      for (int s = 0; s < samples; s++) {
        long at = first + (last - first) * s / samples;
        if (at < frames.frameCount() && frames.has((int) at) && frames.read((int) at, frame)) {
          read++;
          for (int i = 0; i < lamps.length; i++) {
            screen.addLamp(frame, lamps[i], sums, 3 * i);
          }
        }
      }
      for (int i = 0; i < lamps.length; i++) {
        argb[i][x] =
            read == 0
                ? 0
                : Srgb8.argb(sums[3 * i] / read, sums[3 * i + 1] / read, sums[3 * i + 2] / read);
        for (int c = 0; c < columns[i].length; c++) {
          duties[i][c][x] = read == 0 ? -1 : frame[columns[i][c]] & 0xFF;
        }
      }
    }
    Strip[] strips = new Strip[lamps.length];
    for (int i = 0; i < lamps.length; i++) {
      strips[i] = new Strip(axis, argb[i], duties[i]);
    }
    return strips;
  }

  private static int[] columns(ScreenLight screen, int lamp) {
    return java.util.stream.IntStream.range(0, screen.pixels(lamp))
        .flatMap(pixel -> java.util.Arrays.stream(screen.columns(lamp, pixel)))
        .toArray();
  }
}
