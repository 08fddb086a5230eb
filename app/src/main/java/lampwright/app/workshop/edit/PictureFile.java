package lampwright.app.workshop.edit;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Looks at the head of a picture file before anything larger is read of it. */
public final class PictureFile {
  /** The largest file that is shown. */
  public static final long MAX_BYTES = 64L << 20;

  /** The most pixels a side. */
  public static final int MAX_SIDE = 8192;

  private static final long PNG = 0x8950_4E47_0D0A_1A0AL;
  private static final int JPEG = 0xFFD8;

  /** The size of a picture in pixels. */
  public record Size(int width, int height) {}

  private PictureFile() {}

  /** The size of a PNG or JPEG; empty if it is neither, too large, or not whole at its head. */
  public static Optional<Size> size(Path file) {
    try {
      if (!Files.isRegularFile(file) || Files.size(file) > MAX_BYTES) {
        return Optional.empty();
      }
      try (InputStream in = Files.newInputStream(file)) {
        return size(in);
      }
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  static Optional<Size> size(InputStream in) throws IOException {
    return size(new DataInputStream(new BufferedInputStream(in))).filter(PictureFile::fits);
  }

  private static boolean fits(Size size) {
    return size.width() >= 1
        && size.height() >= 1
        && size.width() <= MAX_SIDE
        && size.height() <= MAX_SIDE;
  }

  private static Optional<Size> size(DataInputStream data) throws IOException {
    data.mark(16);
    if (data.readLong() == PNG) {
      // ISO/IEC 15948: the first chunk is IHDR: length, name, width, height.
      data.skipNBytes(8);
      return Optional.of(new Size(data.readInt(), data.readInt()));
    }
    data.reset();
    if (data.readUnsignedShort() != JPEG) {
      return Optional.empty();
    }
    // ITU-T T.81, B.1.1.3: a start-of-frame marker holds height and width.
    while (true) {
      if (data.readUnsignedByte() != 0xFF) {
        return Optional.empty();
      }
      int marker = data.readUnsignedByte();
      while (marker == 0xFF) {
        marker = data.readUnsignedByte();
      }
      if ((marker >= 0xD0 && marker <= 0xD8) || marker == 0x01) {
        continue;
      }
      int length = data.readUnsignedShort();
      if (length < 2 || marker == 0xD9 || marker == 0xDA) {
        return Optional.empty();
      }
      boolean frame =
          marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
      if (frame) {
        data.readUnsignedByte();
        int height = data.readUnsignedShort();
        return Optional.of(new Size(data.readUnsignedShort(), height));
      }
      data.skipNBytes(length - 2);
    }
  }
}
