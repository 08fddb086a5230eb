package lampwright.app.workshop.sound;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import lampwright.app.workshop.sound.SoundFault.Reason;
import lampwright.engine.work.LatestWorker;

/**
 * Plays sounds on the machine's own device, from a thread of its own. It keeps in step with the
 * clock: what a slow device or disk is late by is left out.
 */
public final class SpeakerOutput implements SoundOutput {
  /** Gives a line to a device, not yet open. */
  @FunctionalInterface
  public interface Lines {
    /** A line for a format; fails where there is none. */
    SourceDataLine line(AudioFormat format) throws LineUnavailableException;
  }

  /** More than this is heard as out of step; it is three frames of 50 per second. */
  private static final double MOST_OFF_MS = 60;

  // Short, so that a pause is heard at once.
  private static final int BUFFER_MS = 60;
  private static final int BLOCK_MS = 10;
  private static final double CHECK_EVERY_MS = 200;

  private final Lines lines;
  private final LongSupplier nanos;
  private final Consumer<Optional<Reason>> trouble;
  private final LatestWorker worker;

  /**
   * @param nanos a clock that only goes forward
   * @param trouble is told on the screen's thread why nothing is heard, or that it is
   * @param screen runs what it is given on the screen's thread
   */
  public SpeakerOutput(
      Lines lines, LongSupplier nanos, Consumer<Optional<Reason>> trouble, Executor screen) {
    this.lines = lines;
    this.nanos = nanos;
    this.trouble = trouble;
    this.worker = LatestWorker.named("guide-sound", screen, LatestWorker.Ending.ASK);
  }

  /** The one of this machine. */
  public static SpeakerOutput ofMachine(Consumer<Optional<Reason>> trouble, Executor screen) {
    return new SpeakerOutput(AudioSystem::getSourceDataLine, System::nanoTime, trouble, screen);
  }

  @Override
  public void play(SoundClip clip, double fromMs) {
    long asked = nanos.getAsLong();
    worker.request(turn -> play(clip, fromMs, asked, turn));
  }

  @Override
  public void stop() {
    worker.cancel();
  }

  @Override
  public void close() {
    worker.close();
  }

  private void play(SoundClip clip, double fromMs, long asked, LatestWorker.Turn turn) {
    try (SourceDataLine line = lines.line(SoundFile.PLAYED)) {
      line.open(SoundFile.PLAYED, BUFFER_MS * SoundFile.BYTES_OF_MS);
      turn.show(() -> trouble.accept(Optional.empty()));
      boolean more = true;
      while (more && !turn.overtaken()) {
        more = stretch(clip, fromMs, asked, line, turn);
      }
    } catch (SoundFault fault) {
      tell(turn, fault.reason());
    } catch (IOException unreadable) {
      tell(turn, Reason.DAMAGED);
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException none) {
      // A machine without a device is no fault: the light plays.
      tell(turn, Reason.NO_DEVICE);
    }
  }

  private void tell(LatestWorker.Turn turn, Reason reason) {
    turn.show(() -> trouble.accept(Optional.of(reason)));
  }

  // Plays until the end (false) or until it is out of step with the clock (true).
  private boolean stretch(
      SoundClip clip, double fromMs, long asked, SourceDataLine line, LatestWorker.Turn turn)
      throws SoundFault, IOException {
    double wanted = fromMs + passedMs(asked);
    try (AudioInputStream in = SoundFile.open(clip.file(), wanted)) {
      // The first file of a session, or of a slow disk, takes as long as some frames to open.
      double start = fromMs + passedMs(asked);
      SoundFile.skip(in, start - wanted);
      long frames = line.getLongFramePosition();
      double checked = start;
      byte[] block = new byte[BLOCK_MS * SoundFile.BYTES_OF_MS];
      line.start();
      while (!turn.overtaken()) {
        int read = in.readNBytes(block, 0, block.length);
        // Whole frames only: a line takes no others.
        int whole = read - read % SoundFile.PLAYED.getFrameSize();
        line.write(block, 0, whole);
        if (read < block.length) {
          line.drain();
          return false;
        }
        double now = fromMs + passedMs(asked);
        if (now - checked > CHECK_EVERY_MS) {
          checked = now;
          double heard =
              start
                  + (line.getLongFramePosition() - frames)
                      * 1000.0
                      / SoundFile.PLAYED.getFrameRate();
          if (Math.abs(heard - now) > MOST_OFF_MS) {
            line.stop();
            line.flush();
            return true;
          }
        }
      }
      line.stop();
      line.flush();
      return false;
    }
  }

  private double passedMs(long sinceNanos) {
    return (nanos.getAsLong() - sinceNanos) / 1e6;
  }
}
