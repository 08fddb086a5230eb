package lampwright.app.workshop.sound;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioFormat.Encoding;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import lampwright.app.workshop.disk.ProjectFolder;
import lampwright.app.workshop.sound.SoundFault.Reason;

/**
 * Reads WAV and AIFF files. What a header says of lengths is not believed: a file is read to its
 * end, and only so much of it.
 */
public final class SoundFile {
  /** The most bytes of a file. */
  public static final long MAX_BYTES = 256L << 20;

  /** The longest sound: an hour. */
  public static final int MAX_MS = 3_600_000;

  /** What every sound becomes: 48 frames in a millisecond. */
  static final AudioFormat PLAYED = new AudioFormat(48_000, 16, 2, true, false);

  /** Bytes of a millisecond of it. */
  static final int BYTES_OF_MS = 192;

  // Wider than any card or recorder; what is beyond is a damaged header.
  private static final int MAX_CHANNELS = 32;
  private static final float LEAST_RATE = 1_000;
  private static final float MOST_RATE = 768_000;
  private static final int BLOCK_MS = 100;

  private SoundFile() {}

  /**
   * Reads one of a project.
   *
   * @param folder the project's
   * @param overtaken whether nobody wants it any more
   * @throws CancellationException then
   */
  public static SoundClip read(Path folder, Path file, BooleanSupplier overtaken)
      throws SoundFault {
    check(file);
    try {
      if (ProjectFolder.leadsOut(folder, file)) {
        throw new SoundFault(Reason.OUTSIDE);
      }
      try (AudioInputStream in = open(file, 0)) {
        return new SoundClip(file, waveform(in, overtaken));
      }
    } catch (IOException | RuntimeException damaged) {
      throw fault(damaged);
    }
  }

  /** Whether a file's head is that of a sound that can be read. */
  public static boolean isSound(Path file) {
    try {
      check(file);
      try (AudioInputStream in = open(file, 0)) {
        return in.getFormat().equals(PLAYED);
      }
    } catch (SoundFault | IOException | RuntimeException none) {
      return false;
    }
  }

  /**
   * Opens one in the format that is played.
   *
   * @param fromMs what is before this is left out
   */
  static AudioInputStream open(Path file, double fromMs) throws SoundFault, IOException {
    InputStream bytes = new BufferedInputStream(new FileInputStream(file.toFile()), 1 << 16);
    try {
      checkHead(bytes);
      AudioInputStream raw = AudioSystem.getAudioInputStream(bytes);
      checkFormat(raw.getFormat());
      skip(raw, fromMs);
      return converted(raw);
    } catch (UnsupportedAudioFileException | SoundFault | IOException | RuntimeException none) {
      bytes.close();
      throw fault(none);
    }
  }

  private static SoundFault fault(Exception cause) {
    if (cause instanceof CancellationException cancelled) {
      throw cancelled;
    }
    if (cause instanceof SoundFault known) {
      return known;
    }
    // The readers of this platform throw what comes where a header is nonsense.
    return new SoundFault(
        cause instanceof UnsupportedAudioFileException ? Reason.NO_SOUND : Reason.DAMAGED, cause);
  }

  private static void check(Path file) throws SoundFault {
    BasicFileAttributes found;
    try {
      found = Files.readAttributes(file, BasicFileAttributes.class);
    } catch (NoSuchFileException missing) {
      throw new SoundFault(Reason.MISSING, missing);
    } catch (IOException unreadable) {
      throw new SoundFault(Reason.DAMAGED, unreadable);
    }
    if (!found.isRegularFile()) {
      // A pipe may never end, nor even begin.
      throw new SoundFault(Reason.NOT_REGULAR);
    }
    if (found.size() > MAX_BYTES) {
      throw new SoundFault(Reason.TOO_LARGE);
    }
  }

  // Else a score of notes or whatever this platform reads would be played, too.
  private static void checkHead(InputStream bytes) throws IOException, SoundFault {
    bytes.mark(16);
    String head = new String(bytes.readNBytes(12), StandardCharsets.ISO_8859_1);
    bytes.reset();
    boolean wav = head.startsWith("RIFF") && head.endsWith("WAVE");
    boolean aiff = head.startsWith("FORM") && (head.endsWith("AIFF") || head.endsWith("AIFC"));
    if (head.length() < 12 || !(wav || aiff)) {
      throw new SoundFault(Reason.NO_SOUND);
    }
  }

  private static void checkFormat(AudioFormat format) throws SoundFault {
    int channels = format.getChannels();
    float rate = format.getSampleRate();
    int bits = format.getSampleSizeInBits();
    boolean good =
        channels >= 1
            && channels <= MAX_CHANNELS
            && rate >= LEAST_RATE
            && rate <= MOST_RATE
            && bits >= 1
            && bits <= 64
            && format.getFrameSize() >= channels
            && format.getFrameSize() <= MAX_CHANNELS * 8;
    if (!good) {
      throw new SoundFault(Reason.DAMAGED);
    }
  }

  /** Leaves out what comes next, as long as there is something. */
  static void skip(AudioInputStream sound, double ms) throws IOException {
    AudioFormat format = sound.getFormat();
    long left = Math.round(ms * format.getFrameRate() / 1000) * format.getFrameSize();
    while (left > 0) {
      long skipped = sound.skip(left);
      if (skipped <= 0) {
        return;
      }
      left -= skipped;
    }
  }

  private static AudioInputStream converted(AudioInputStream raw) throws SoundFault {
    Encoding encoding = raw.getFormat().getEncoding();
    boolean packed = encoding.equals(Encoding.ULAW) || encoding.equals(Encoding.ALAW);
    AudioInputStream plain =
        packed ? AudioSystem.getAudioInputStream(Encoding.PCM_SIGNED, raw) : raw;
    if (plain.getFormat().matches(PLAYED)) {
      return plain;
    }
    if (!AudioSystem.isConversionSupported(PLAYED, plain.getFormat())) {
      throw new SoundFault(Reason.NO_SOUND);
    }
    return AudioSystem.getAudioInputStream(PLAYED, plain);
  }

  private static Waveform waveform(AudioInputStream in, BooleanSupplier overtaken)
      throws IOException, SoundFault {
    ByteArrayOutputStream least = new ByteArrayOutputStream();
    ByteArrayOutputStream greatest = new ByteArrayOutputStream();
    byte[] block = new byte[BLOCK_MS * BYTES_OF_MS];
    while (true) {
      if (overtaken.getAsBoolean()) {
        throw new CancellationException();
      }
      int read = in.readNBytes(block, 0, block.length);
      for (int from = 0; from < read; from += BYTES_OF_MS) {
        addMs(block, from, Math.min(read, from + BYTES_OF_MS), least, greatest);
      }
      if (least.size() > MAX_MS) {
        throw new SoundFault(Reason.TOO_LONG);
      }
      if (read < block.length) {
        return new Waveform(least.toByteArray(), greatest.toByteArray());
      }
    }
  }

  private static void addMs(
      byte[] block, int from, int to, ByteArrayOutputStream least, ByteArrayOutputStream greatest) {
    ByteBuffer samples = ByteBuffer.wrap(block, from, to - from).order(ByteOrder.LITTLE_ENDIAN);
    int low = Short.MAX_VALUE;
    int high = Short.MIN_VALUE;
    while (samples.remaining() >= Short.BYTES) {
      int sample = samples.getShort();
      low = Math.min(low, sample);
      high = Math.max(high, sample);
    }
    if (low <= high) {
      least.write(low >> Byte.SIZE);
      greatest.write(high >> Byte.SIZE);
    }
  }
}
