package lampwright.engine.disk;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;

/** A pipe that has a name and that nobody writes, for tests of what reads files. */
public final class NamedPipe {
  private NamedPipe() {}

  /** Makes it at a place; the test is left out where the system has no such pipes. */
  public static Path at(Path place) throws InterruptedException {
    try {
      assumeTrue(new ProcessBuilder("mkfifo", place.toString()).start().waitFor() == 0);
    } catch (IOException noSuchCommand) {
      assumeTrue(false, "mkfifo is missing");
    }
    return place;
  }
}
