package lampwright.app.workshop.sound;

import java.nio.file.Path;

/**
 * A sound that was read.
 *
 * @param file where it is; it is read again while it is played
 * @param waveform what it looks like
 */
public record SoundClip(Path file, Waveform waveform) {
  /** How long it is. */
  public int lengthMs() {
    return waveform.lengthMs();
  }
}
