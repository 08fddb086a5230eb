package lampwright.app.workshop.sound;

/** Where sounds are heard. Nothing in it waits. */
public interface SoundOutput extends AutoCloseable {
  /** Plays a sound from a time of it, in place of what was played before. */
  void play(SoundClip clip, double fromMs);

  /** Is silent. */
  void stop();

  @Override
  void close();
}
