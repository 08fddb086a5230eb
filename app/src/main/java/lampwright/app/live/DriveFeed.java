package lampwright.app.live;

import lampwright.engine.render.ShowFrames;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;

/**
 * What the situations make of a recorded drive, by a clock, from the first time that it is asked.
 * At its end the last frame stays.
 */
public final class DriveFeed implements FrameFeed {
  private final ShowFrames frames;
  private final Drive.Player readings;
  private final BenchBrightness brightness;
  private final int count;
  private final byte[] rendered;
  private final ShowTime time;
  private byte[] shown;
  private long at = -1;

  public DriveFeed(Show show, Drive drive, BenchBrightness brightness) {
    this.frames = new ShowFrames(show);
    this.readings = new Drive.Player(drive, show.clock());
    this.brightness = brightness;
    this.count = drive.frames(show.clock()).orElse(1);
    this.rendered = new byte[frames.frameBytes()];
    this.time = new ShowTime(show.clock().framesPerSecond().doubleValue());
    this.shown = rendered.clone();
  }

  @Override
  public byte[] at(long nanos) {
    long due = Math.min(time.frame(nanos), count - 1L);
    boolean moved = at < due;
    // Every frame is worked out: each rests on those before it.
    while (at < due) {
      readings.feed(frames.machine());
      frames.next(rendered);
      at++;
    }
    if (moved) {
      shown = brightness.of(rendered);
    }
    return shown;
  }
}
