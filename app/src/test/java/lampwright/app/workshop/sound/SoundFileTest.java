package lampwright.app.workshop.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CancellationException;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import lampwright.app.workshop.sound.SoundFault.Reason;
import lampwright.engine.disk.NamedPipe;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SoundFileTest {
  @TempDir Path folder;

  private SoundClip read(Path file) throws SoundFault {
    return SoundFile.read(folder, file, () -> false);
  }

  private SoundClip read(byte[] bytes) throws SoundFault, IOException {
    return read(Files.write(folder.resolve("a.wav"), bytes));
  }

  private Reason fault(Path file) {
    return assertThrows(SoundFault.class, () -> read(file)).reason();
  }

  private Reason fault(byte[] bytes) throws IOException {
    return fault(Files.write(folder.resolve("a.wav"), bytes));
  }

  private static void isStep(SoundClip clip) {
    assertThat(clip.lengthMs()).isCloseTo(1000, within(2));
    Waveform.Span silence = clip.waveform().between(20, 480);
    assertThat(silence.greatest()).isCloseTo(0, within(0.01));
    assertThat(silence.least()).isCloseTo(0, within(0.01));
    // A constant half of full; filters of other rates ring at the step.
    Waveform.Span half = clip.waveform().between(550, 950);
    assertThat(half.greatest()).isCloseTo(0.5, within(0.02));
    assertThat(half.least()).isCloseTo(0.5, within(0.02));
  }

  @ParameterizedTest
  @CsvSource({
    "1, 44100, 16, 1",
    "1, 48000, 16, 2",
    "1, 48000, 24, 2",
    "1, 11025, 8, 1",
    "1, 8000, 16, 6",
    "3, 96000, 32, 1",
    "3, 44100, 32, 2"
  })
  void samplesOfAllUsualFormsAreRead(int code, int rate, int bits, int channels)
      throws SoundFault, IOException {
    isStep(read(new Wav(code, rate, bits, channels).bytes(1, Wav::step)));
  }

  @Test
  void muLawIsRead() throws SoundFault, IOException {
    SoundClip clip = read(new Wav(7, 8000, 8, 1).bytes(1, Wav::step));
    // ITU-T G.711, table 2a: 0x8F decodes to 4191 of 8159 (from memory).
    assertThat(clip.waveform().between(600, 900).greatest()).isCloseTo(0.51, within(0.02));
  }

  @Test
  void aiffIsRead() throws SoundFault, IOException {
    byte[] samples = new byte[2 * 44_100];
    for (int i = 22_050; i < 44_100; i++) {
      samples[2 * i] = 0x40;
    }
    AudioFormat format = new AudioFormat(44_100, 16, 1, true, true);
    Path file = folder.resolve("a.aiff");
    AudioSystem.write(
        new AudioInputStream(new ByteArrayInputStream(samples), format, 44_100),
        AudioFileFormat.Type.AIFF,
        file.toFile());
    isStep(read(file));
  }

  @Test
  void zeroOneAndManyFramesAreRead() throws SoundFault, IOException {
    Wav form = new Wav(1, 48_000, 16, 2);
    assertThat(read(form.bytes(0, t -> 0)).lengthMs()).isZero();
    assertThat(read(form.bytes(1 / 48_000.0, t -> 1)).lengthMs()).isEqualTo(1);
    assertThat(read(form.bytes(0.001, t -> 1)).lengthMs()).isEqualTo(1);
    assertThat(read(form.bytes(49 / 48_000.0, t -> 1)).lengthMs()).isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(ints = {Integer.MAX_VALUE - 40, -1, -40})
  void headThatClaimsMoreIsNotBelieved(int said) throws SoundFault, IOException {
    byte[] whole = Wav.USUAL.bytes(1, Wav::step);
    isStep(read(Wav.USUAL.file(Arrays.copyOfRange(whole, 44, whole.length), said)));
  }

  @ParameterizedTest
  @CsvSource({"0, 16, 1", "44100, 16, 0", "44100, 16, 30000", "44100, 0, 1", "2000000000, 16, 1"})
  void headThatMakesNoSenseIsDamaged(int rate, int bits, int channels) throws IOException {
    byte[] head = new Wav(1, rate, bits, channels).file(new byte[4000], 4000);
    assertThat(fault(head)).isIn(Reason.DAMAGED, Reason.NO_SOUND);
  }

  @Test
  void whatIsNoSoundIsRefused() throws IOException {
    assertThat(fault(new byte[0])).isEqualTo(Reason.NO_SOUND);
    assertThat(fault("not a sound at all".getBytes(StandardCharsets.US_ASCII)))
        .isEqualTo(Reason.NO_SOUND);
    // A score that the platform would play by its own instruments.
    byte[] score = {'M', 'T', 'h', 'd', 0, 0, 0, 6, 0, 0, 0, 1, 0, 96, 'M', 'T', 'r', 'k', 0, 0};
    assertThat(fault(score)).isEqualTo(Reason.NO_SOUND);
    assertThat(fault(new Wav(85, 44_100, 16, 1).file(new byte[400], 400)))
        .isEqualTo(Reason.NO_SOUND);
  }

  @Test
  void onlyRegularFilesInTheFolderAreRead() throws Exception {
    assertThat(fault(folder.resolve("none.wav"))).isEqualTo(Reason.MISSING);
    assertThat(fault(Files.createDirectory(folder.resolve("b.wav")))).isEqualTo(Reason.NOT_REGULAR);
    assertThat(fault(NamedPipe.at(folder.resolve("pipe.wav")))).isEqualTo(Reason.NOT_REGULAR);
    Path elsewhere = Wav.write(Files.createTempDirectory("elsewhere").resolve("secret.wav"));
    Path link = Files.createSymbolicLink(folder.resolve("link.wav"), elsewhere);
    assertThat(fault(link)).isEqualTo(Reason.OUTSIDE);
    assertThat(SoundFile.isSound(link)).isTrue();
    Path inside = Wav.write(folder.resolve("own.wav"));
    isStep(read(Files.createSymbolicLink(folder.resolve("own-link.wav"), inside)));
  }

  @Test
  void tooLargeAndTooLongFilesAreRefused() throws IOException {
    Path large = Wav.write(folder.resolve("large.wav"));
    try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
      file.setLength(SoundFile.MAX_BYTES + 1);
    }
    assertThat(fault(large)).isEqualTo(Reason.TOO_LARGE);
    assertThat(SoundFile.isSound(large)).isFalse();
    Wav slow = new Wav(1, 1_000, 8, 1);
    assertThat(fault(slow.bytes(3_601, t -> 0))).isEqualTo(Reason.TOO_LONG);
  }

  @Test
  void damagedFilesAreFaultsAndNothingElse() throws IOException {
    long seed = 20_261_129;
    Random random = new Random(seed);
    byte[] good = Wav.USUAL.bytes(0.05, Wav::step);
    for (int i = 0; i < 400; i++) {
      byte[] damaged = Arrays.copyOf(good, i % 4 == 0 ? random.nextInt(good.length) : good.length);
      for (int k = 0; k < 3 && damaged.length > 0; k++) {
        damaged[random.nextInt(Math.min(damaged.length, 44))] = (byte) random.nextInt();
      }
      try {
        assertThat(read(damaged).lengthMs()).isBetween(0, 60_000);
      } catch (SoundFault fault) {
        assertThat(fault.reason()).isIn(Reason.DAMAGED, Reason.NO_SOUND);
      }
    }
  }

  @Test
  void soundIsOpenedFromATimeOfIt() throws Exception {
    Path file = Wav.write(folder.resolve("a.wav"));
    try (AudioInputStream in = SoundFile.open(file, 750)) {
      byte[] rest = in.readAllBytes();
      assertThat((double) rest.length / SoundFile.BYTES_OF_MS).isCloseTo(250, within(2.0));
    }
    try (AudioInputStream in = SoundFile.open(file, 5000)) {
      // A filter of another rate may add a few frames.
      assertThat(in.readAllBytes()).containsOnly(0).hasSizeLessThan(SoundFile.BYTES_OF_MS);
    }
  }

  @Test
  void overtakenReadingEnds() throws IOException {
    Path file = Wav.write(folder.resolve("a.wav"));
    assertThrows(CancellationException.class, () -> SoundFile.read(folder, file, () -> true));
  }

  @Test
  void coarseLookAtTheWaveformMissesNoPeak() throws SoundFault, IOException {
    SoundClip clip =
        read(new Wav(1, 48_000, 16, 2).bytes(2, t -> t >= 1.2 && t < 1.2005 ? -0.75 : 0));
    assertThat(clip.waveform().between(0, 2000).least()).isCloseTo(-0.75, within(0.01));
    assertThat(clip.waveform().between(1200, 1201).least()).isCloseTo(-0.75, within(0.01));
    assertThat(clip.waveform().between(0, 1199)).isEqualTo(Waveform.Span.SILENCE);
    assertThat(clip.waveform().between(-500, 0)).isEqualTo(Waveform.Span.SILENCE);
    assertThat(clip.waveform().between(2000, 2500)).isEqualTo(Waveform.Span.SILENCE);
  }
}
