package lampwright.engine.disk;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Files that are written whole or not at all. */
public final class WholeFile {
  private WholeFile() {}

  /** What a file is to have in it. */
  @FunctionalInterface
  public interface Contents {
    /** Writes it; whatever it throws leaves the file as it was. */
    void write(OutputStream out) throws IOException;
  }

  /**
   * Writes a text, in UTF-8, as {@link #write(Path, Contents)} does.
   *
   * @throws IOException if it cannot be written; its message names the file and the reason
   */
  public static void write(Path file, String text) throws IOException {
    write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  /**
   * Writes a file beside its place and moves it there once it is whole on the disk; on any failure
   * what is there stays as it was, and nothing is left beside. The permissions of a file that is
   * replaced stay. The folder is made if it is missing.
   *
   * @throws IOException if it cannot be written; its message names the file and the reason
   */
  public static void write(Path file, Contents contents) throws IOException {
    Path place = file.toAbsolutePath();
    Path folder = place.getParent();
    if (folder == null) {
      throw new IOException(FileTroubles.text(file, NamedOutput.WRITING + ": it is a folder"));
    }
    Folders.makeToWrite(folder);
    try (StagedFile staged = StagedFile.open(place)) {
      contents.write(staged);
      staged.commit();
    }
  }
}
