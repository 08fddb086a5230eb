package lampwright.app.startup;

import java.lang.invoke.MethodHandles;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.review.Code;

/**
 * What every command on a project needs, and what takes long to set up, is begun on another thread
 * while this one reads the file.
 *
 * <p>Threads that initialize classes which need each other may wait for each other for good. These
 * need nothing of who reads files and command lines, and what reads a file needs {@code Project}
 * first of all that it shares with them.
 */
public final class Ahead {
  private static final List<Class<?>> NEEDED = List.of(Project.class, Code.class);

  private Ahead() {}

  /** Begins it, where there is a processor to do it, and returns at once. */
  public static void begin() {
    if (Runtime.getRuntime().availableProcessors() > 1) {
      Thread thread = new Thread(Ahead::prepare, "ahead");
      thread.setDaemon(true);
      thread.start();
    }
  }

  private static void prepare() {
    for (Class<?> needed : NEEDED) {
      try {
        MethodHandles.lookup().ensureInitialized(needed);
      } catch (IllegalAccessException notPublic) {
        throw new IllegalStateException(notPublic);
      }
    }
  }
}
