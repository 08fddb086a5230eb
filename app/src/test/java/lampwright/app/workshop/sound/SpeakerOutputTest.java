package lampwright.app.workshop.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import lampwright.app.workshop.sound.SoundFault.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SpeakerOutputTest {
  private static final long SECOND = 1_000_000_000;

  @TempDir Path folder;

  private final BlockingQueue<Optional<Reason>> told = new LinkedBlockingQueue<>();
  private final BlockingQueue<String> ended = new LinkedBlockingQueue<>();
  private final ByteArrayOutputStream heard = new ByteArrayOutputStream();

  /** A line that takes everything at once; where it has come to is what {@code position} says. */
  private SourceDataLine line(LongSupplier position) {
    return (SourceDataLine)
        Proxy.newProxyInstance(
            getClass().getClassLoader(),
            new Class<?>[] {SourceDataLine.class},
            (proxy, method, given) -> {
              switch (method.getName()) {
                case "write" -> {
                  heard.write((byte[]) given[0], (int) given[1], (int) given[2]);
                  return given[2];
                }
                case "getLongFramePosition" -> {
                  return position.getAsLong();
                }
                case "flush", "drain", "close" -> ended.add(method.getName());
                default -> {}
              }
              return null;
            });
  }

  private SoundClip clip() throws Exception {
    return SoundFile.read(folder, Wav.write(folder.resolve("a.wav")), () -> false);
  }

  private void awaitEnd() throws InterruptedException {
    String last = "";
    while (!last.equals("close")) {
      last = ended.poll(60, TimeUnit.SECONDS);
      assertThat(last).isNotNull();
    }
  }

  @Test
  void soundIsPlayedFromItsTimeToItsEnd() throws Exception {
    SoundClip clip = clip();
    try (SpeakerOutput output =
        new SpeakerOutput(format -> line(() -> 0), () -> 0, told::add, Runnable::run)) {
      output.play(clip, 600);
      awaitEnd();
    }
    assertThat(heard.size() / SoundFile.BYTES_OF_MS).isBetween(398, 402);
    assertThat(told).containsOnly(Optional.empty());
  }

  @Test
  void timeThatADeviceTakesToOpenIsLeftOut() throws Exception {
    SoundClip clip = clip();
    AtomicLong now = new AtomicLong();
    try (SpeakerOutput output =
        new SpeakerOutput(
            format -> {
              now.set(SECOND / 5);
              return line(() -> 0);
            },
            now::get,
            told::add,
            Runnable::run)) {
      output.play(clip, 600);
      awaitEnd();
    }
    assertThat(heard.size() / SoundFile.BYTES_OF_MS).isBetween(198, 202);
  }

  @Test
  void lateDeviceBeginsAnewInStep() throws Exception {
    SoundClip clip = clip();
    AtomicLong now = new AtomicLong();
    try (SpeakerOutput output =
        new SpeakerOutput(
            // It never plays anything, while each block takes 100 ms.
            format -> line(() -> 0),
            () -> now.getAndAdd(SECOND / 10),
            told::add,
            Runnable::run)) {
      output.play(clip, 0);
      awaitEnd();
    }
    // A second by the clock is over long before a hundred blocks of 10 ms are.
    assertThat(heard.size() / SoundFile.BYTES_OF_MS).isLessThan(200);
  }

  @Test
  void machineWithoutADeviceIsToldAndNoFault() throws Exception {
    SoundClip clip = clip();
    for (Exception none :
        new Exception[] {
          new LineUnavailableException("in use"), new IllegalArgumentException("no line")
        }) {
      try (SpeakerOutput output =
          new SpeakerOutput(
              format -> {
                if (none instanceof LineUnavailableException unavailable) {
                  throw unavailable;
                }
                throw (IllegalArgumentException) none;
              },
              () -> 0,
              told::add,
              Runnable::run)) {
        output.play(clip, 0);
        assertThat(told.poll(60, TimeUnit.SECONDS)).isEqualTo(Optional.of(Reason.NO_DEVICE));
      }
    }
  }

  @Test
  void fileThatVanishedIsTold() throws Exception {
    SoundClip clip = clip();
    Files.delete(clip.file());
    try (SpeakerOutput output =
        new SpeakerOutput(format -> line(() -> 0), () -> 0, told::add, Runnable::run)) {
      output.play(clip, 0);
      assertThat(told.poll(60, TimeUnit.SECONDS)).isEqualTo(Optional.empty());
      assertThat(told.poll(60, TimeUnit.SECONDS)).isEqualTo(Optional.of(Reason.DAMAGED));
    }
  }
}
