package lampwright.app.workshop.sound;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoubleUnaryOperator;

/**
 * Writes WAV files for tests, byte by byte as "Multimedia Programming Interface and Data
 * Specifications 1.0" (1991) lays them out (from memory).
 *
 * @param code of the samples' form: 1 whole numbers, 3 floating point, 7 mu-law
 */
public record Wav(int code, int rate, int bits, int channels) {
  /** 16 bits at 44,100 Hz, one channel. */
  public static final Wav USUAL = new Wav(1, 44_100, 16, 1);

  /** A sound of a length whose value at a time in seconds is given, -1 to 1. */
  public byte[] bytes(double seconds, DoubleUnaryOperator value) {
    int frames = (int) Math.round(seconds * rate);
    ByteBuffer data =
        ByteBuffer.allocate(frames * channels * bits / 8).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < frames; i++) {
      for (int c = 0; c < channels; c++) {
        put(data, value.applyAsDouble((double) i / rate));
      }
    }
    return file(data.array(), data.capacity());
  }

  /** A file whose head says that it has so many bytes of samples. */
  public byte[] file(byte[] data, int said) {
    int block = channels * bits / 8;
    return ByteBuffer.allocate(44 + data.length)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii("RIFF"))
        .putInt(said + 36)
        .put(ascii("WAVEfmt "))
        .putInt(16)
        .putShort((short) code)
        .putShort((short) channels)
        .putInt(rate)
        .putInt(rate * block)
        .putShort((short) block)
        .putShort((short) bits)
        .put(ascii("data"))
        .putInt(said)
        .put(data)
        .array();
  }

  /** Half a second of silence, then half a second at half of full. */
  public static double step(double seconds) {
    return seconds < 0.5 ? 0 : 0.5;
  }

  /** A second of that as a file. */
  public static Path write(Path file) throws IOException {
    return Files.write(file, USUAL.bytes(1, Wav::step));
  }

  private void put(ByteBuffer data, double value) {
    if (code == 3) {
      data.putFloat((float) value);
    } else if (code == 7) {
      // ITU-T G.711: 0xFF is 0; 0x8F is the middle of the second-highest segment's lowest step.
      data.put((byte) (value == 0 ? 0xFF : 0x8F));
    } else if (bits == 8) {
      data.put((byte) Math.round(128 + value * 127));
    } else if (bits == 24) {
      int whole = (int) Math.round(value * ((1 << 23) - 1));
      data.put((byte) whole).put((byte) (whole >> 8)).put((byte) (whole >> 16));
    } else {
      data.putShort((short) Math.round(value * Short.MAX_VALUE));
    }
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
