package lampwright.app.picture;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.function.Consumer;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FrameGauge;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;

/**
 * A scene as a moving picture of a model. A frame is shown from its instant on, rounded to the
 * hundredth of a second in which the format counts; so each begins at most half of one early or
 * late, and these errors do not add up. Frames that come sooner after another than the format
 * shows, as above 50 per second, are left out.
 */
public final class SceneMovie {
  /** Longer, such a file is larger than most places take. Our own choice. */
  public static final double MOST_SECONDS = 60;

  private final ModelPicture model;
  private final FrameTable table;
  private final int frames;

  /**
   * @param mostSeconds of the scene that are shown, from its start; above 0
   */
  public SceneMovie(ModelPicture model, FrameTable table, double mostSeconds) {
    this.model = model;
    // Dither makes noise of what the eye sees as one brightness.
    this.table = table.withoutDither();
    double most = Math.ceil(mostSeconds * table.framesPerSecond() - 1e-9);
    this.frames = (int) Math.max(1, Math.min(table.frameCount(), most));
  }

  /** The most light of a picture that is dimmed, or is not. */
  public static float mostLight(boolean dimmed) {
    return dimmed ? Glow.DIMMED_MOST : Float.MAX_VALUE;
  }

  /** How many frames of the scene are shown. */
  public int frames() {
    return frames;
  }

  /** Whether that is less than the whole scene. */
  public boolean isCut() {
    return frames < table.frameCount();
  }

  /** The flashes of what is shown at full light; its end is taken to be followed by its start. */
  public FlashCaution flashes() {
    return model.flashes(table, frames, this::each);
  }

  private void each(FrameGauge gauge) {
    FrameCursor cursor = table.cursor();
    byte[] bytes = new byte[table.layout().bytes()];
    for (int frame = 0; frame < frames; frame++) {
      cursor.next(bytes);
      gauge.frame(frame, bytes);
    }
  }

  /**
   * Writes it as a GIF.
   *
   * @param most nothing adds more light than this to any point; 1 is the screen's white
   * @param progress is told how many frames are done
   * @return how many pictures it has
   */
  public int write(float most, Consumer<Integer> progress, OutputStream out) throws IOException {
    FrameCursor cursor = table.cursor();
    byte[] bytes = new byte[table.layout().bytes()];
    cursor.next(bytes);
    byte[] shown = bytes.clone();
    long end = hundredths(frames);
    boolean loops = table.loops() || isCut();
    try (MovingPicture movie =
        new MovingPicture(model.width(), model.height(), model.paint(bytes, most), loops, out)) {
      for (int frame = 1; frame < frames; frame++) {
        cursor.next(bytes);
        long start = hundredths(frame);
        if (movie.hasRoomAt(start)
            && end - start >= MovingPicture.LEAST_DELAY
            && !Arrays.equals(bytes, shown)) {
          movie.show(model.paint(bytes, most), start);
          shown = bytes.clone();
        }
        progress.accept(frame);
      }
      movie.end(end);
      return movie.pictures();
    }
  }

  private long hundredths(int frame) {
    return Math.round(100.0 * frame / table.framesPerSecond());
  }
}
