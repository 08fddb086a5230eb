package lampwright.engine.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Moves a file into place, replacing what is there, at once. */
@FunctionalInterface
interface Mover {
  /** By the system's own move, which is whole or not at all. */
  Mover ATOMIC = (from, to) -> Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);

  void move(Path from, Path to) throws IOException;
}
