package lampwright.engine.disk;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Writes a new file that is to come to another place. Troubles are told by the name of that. */
abstract class NamedOutput extends OutputStream {
  static final String WRITING = "could not write";

  private final Path target;
  private final FileChannel channel;
  private final OutputStream out;

  /**
   * @param file that is written; must not be there yet
   * @param target where it is to come
   */
  NamedOutput(Path file, Path target) throws IOException {
    this.target = target;
    this.channel = FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
    this.out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
  }

  /** Its place. */
  final Path target() {
    return target;
  }

  final FileChannel channel() {
    return channel;
  }

  @Override
  public final void write(int value) throws IOException {
    try {
      out.write(value);
    } catch (IOException trouble) {
      throw clear(trouble);
    }
  }

  @Override
  public final void write(byte[] bytes, int from, int count) throws IOException {
    try {
      out.write(bytes, from, count);
    } catch (IOException trouble) {
      throw clear(trouble);
    }
  }

  @Override
  public final void flush() throws IOException {
    try {
      if (channel.isOpen()) {
        out.flush();
      }
    } catch (IOException trouble) {
      throw clear(trouble);
    }
  }

  /** Its bytes are on the disk then. */
  final void force() throws IOException {
    flush();
    try {
      channel.force(true);
    } catch (IOException trouble) {
      throw clear(trouble);
    }
  }

  final IOException clear(IOException trouble) {
    return FileTroubles.clear(WRITING, target, trouble);
  }
}
