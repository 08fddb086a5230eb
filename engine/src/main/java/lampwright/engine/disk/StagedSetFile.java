package lampwright.engine.disk;

import java.io.IOException;
import java.nio.file.Path;

/** One file of a set, in the work folder. */
final class StagedSetFile extends NamedOutput {
  private StagedSetFile(Path file, Path target) throws IOException {
    super(file, target);
  }

  static StagedSetFile open(Path file, Path target) throws IOException {
    try {
      return new StagedSetFile(file, target);
    } catch (IOException trouble) {
      throw FileTroubles.clear(NamedOutput.WRITING, target, trouble);
    }
  }

  /** Its bytes are on the disk then. */
  @Override
  public void close() throws IOException {
    if (!channel().isOpen()) {
      return;
    }
    force();
    try {
      channel().close();
    } catch (IOException trouble) {
      throw clear(trouble);
    }
  }

  void discard() {
    try {
      channel().close();
    } catch (IOException left) {
      // What could not be written was reported before; the work folder is cleared all the same.
      return;
    }
  }
}
