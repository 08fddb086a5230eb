package lampwright.app.workshop.disk;

import java.time.Duration;

/** Does work that may wait for a disk, one piece after another, off the screen's thread. */
public interface Background {
  /** Does it after what was given before. */
  void run(Runnable work);

  /** Does it no sooner than this. */
  void runAfter(Duration delay, Runnable work);

  /** A clock that never goes back; only differences mean something. */
  Duration now();
}
