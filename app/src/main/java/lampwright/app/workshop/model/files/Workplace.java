package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.engine.disk.Owner;

/**
 * What the file models work with.
 *
 * @param bench whose project is kept
 * @param dialogs asks the builder
 * @param disk writes, and reads what is short
 * @param reader reads projects, which may take long; meanwhile unsaved work is still kept
 * @param screen runs what it is given on the screen's thread
 * @param state the user's state folder
 * @param self this process
 */
public record Workplace(
    Bench bench,
    Dialogs dialogs,
    Background disk,
    Background reader,
    Executor screen,
    Path state,
    Owner self) {
  /** Work that waits for a disk. */
  interface Wait<T> {
    T work() throws IOException;
  }

  /**
   * Waits on a thread for a disk, and then goes on on the screen's: with what came of it or,
   * whatever went wrong, with the reason in words. One of both is always done, so nothing stays
   * busy.
   */
  <T> void then(Background thread, Wait<T> wait, Consumer<T> good, Consumer<String> bad) {
    thread.run(
        () -> {
          T came;
          try {
            came = wait.work();
          } catch (IOException | RuntimeException | Error failed) {
            String words = Failures.words(failed);
            screen.execute(() -> bad.accept(words));
            return;
          }
          screen.execute(() -> good.accept(came));
        });
  }
}
