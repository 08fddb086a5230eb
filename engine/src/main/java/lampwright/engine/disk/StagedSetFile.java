package lampwright.engine.disk;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** One file of a set, in the work folder. Troubles are told by the name of its place. */
final class StagedSetFile extends OutputStream {
  private final Path target;
  private final FileChannel channel;
  private final OutputStream out;

  private StagedSetFile(Path target, FileChannel channel) {
    this.target = target;
    this.channel = channel;
    this.out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
  }

  static StagedSetFile open(Path file, Path target) throws IOException {
    try {
      return new StagedSetFile(
          target, FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW));
    } catch (IOException trouble) {
      throw FileTroubles.clear(StagedFile.WRITING, target, trouble);
    }
  }

  @Override
  public void write(int value) throws IOException {
    try {
      out.write(value);
    } catch (IOException trouble) {
      throw FileTroubles.clear(StagedFile.WRITING, target, trouble);
    }
  }

  @Override
  public void write(byte[] bytes, int from, int count) throws IOException {
    try {
      out.write(bytes, from, count);
    } catch (IOException trouble) {
      throw FileTroubles.clear(StagedFile.WRITING, target, trouble);
    }
  }

  /** Its bytes are on the disk then. */
  @Override
  public void close() throws IOException {
    finish();
  }

  void finish() throws IOException {
    if (!channel.isOpen()) {
      return;
    }
    try (channel) {
      out.flush();
      channel.force(true);
    } catch (IOException trouble) {
      throw FileTroubles.clear(StagedFile.WRITING, target, trouble);
    }
  }

  void discard() {
    try {
      channel.close();
    } catch (IOException left) {
      // What could not be written was reported before; the work folder is cleared all the same.
      return;
    }
  }
}
