package lampwright.app.workshop.sound;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Plays a sound whose every frame of samples has a number of its own on this machine's device, and
 * reads from standard input what the device was given: 16 bits, two channels, 48,000 Hz. Prints a
 * line for each thing that it did, of names and values.
 */
public final class HeardSound {
  private static final int RATE = 48_000;
  private static final int RATE_OF_MS = RATE / 1000;
  private static final int FRAME_BYTES = 4;
  private static final int SECONDS = 6;
  private static final int LOW_BITS = 14;

  /** What is further from the clock than this was asked for before. */
  private static final double NEAR_MS = 450;

  private static final long LONGEST_NANOS = TimeUnit.SECONDS.toNanos(SECONDS);

  private record Heard(long nanos, int frame) {
    double ms() {
      return (double) frame / RATE_OF_MS;
    }
  }

  private final List<Heard> heard = new ArrayList<>();
  private final CountDownLatch listening = new CountDownLatch(1);

  private HeardSound() {}

  /** Takes the folder for the sound. */
  public static void main(String[] arguments) throws Exception {
    Path file = Path.of(arguments[0]).resolve("numbered.wav");
    Files.write(file, new Wav(1, RATE, 16, 2).file(numbered(), RATE * SECONDS * FRAME_BYTES));
    HeardSound here = new HeardSound();
    Thread listener = new Thread(here::listen, "listener");
    listener.setDaemon(true);
    listener.start();
    SoundClip clip = SoundFile.read(file.getParent(), file, () -> false);
    try (SpeakerOutput output =
        SpeakerOutput.ofMachine(
            trouble -> trouble.ifPresent(why -> System.out.println("trouble " + why)),
            Runnable::run)) {
      here.listening.await();
      here.play("beginning", output, clip, 0, 1000);
      output.stop();
      here.rest("stopped");
      here.play("middle", output, clip, 3000, 700);
      // As at the end of a loop.
      here.play("back", output, clip, 500, 700);
      here.play("end", output, clip, 5500, 500);
      here.rest("over");
    }
    System.exit(0);
  }

  // Lower bits in the left sample, upper ones in the right; no sample is 0.
  private static byte[] numbered() {
    ByteBuffer data =
        ByteBuffer.allocate(RATE * SECONDS * FRAME_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < RATE * SECONDS; i++) {
      data.putShort((short) (1 + (i & (1 << LOW_BITS) - 1)));
      data.putShort((short) (1 + (i >> LOW_BITS)));
    }
    return data.array();
  }

  private void listen() {
    InputStream in = System.in;
    byte[] block = new byte[RATE_OF_MS * FRAME_BYTES];
    try {
      while (in.readNBytes(block, 0, block.length) == block.length) {
        long now = System.nanoTime();
        listening.countDown();
        ByteBuffer frames = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
        synchronized (heard) {
          while (frames.hasRemaining()) {
            int left = frames.getShort() - 1;
            int right = frames.getShort() - 1;
            if (left >= 0) {
              heard.add(new Heard(now, left + (right << LOW_BITS)));
            }
          }
        }
      }
    } catch (IOException gone) {
      System.out.println("trouble " + gone);
    }
  }

  private List<Heard> since(long nanos) {
    synchronized (heard) {
      return heard.stream().filter(h -> h.nanos() >= nanos).toList();
    }
  }

  private void play(String name, SpeakerOutput output, SoundClip clip, double fromMs, long ms)
      throws InterruptedException {
    long asked = System.nanoTime();
    output.play(clip, fromMs);
    while (own(asked, fromMs).isEmpty() && System.nanoTime() - asked < LONGEST_NANOS) {
      TimeUnit.MILLISECONDS.sleep(10);
    }
    TimeUnit.MILLISECONDS.sleep(ms);
    List<Heard> own = own(asked, fromMs);
    List<Double> late = own.stream().map(h -> late(h, asked, fromMs)).sorted().toList();
    int gaps = 0;
    int back = 0;
    for (int i = 1; i < own.size(); i++) {
      int by = own.get(i).frame() - own.get(i - 1).frame();
      gaps += by > 1 ? 1 : 0;
      back += by < 1 ? 1 : 0;
    }
    if (own.isEmpty()) {
      System.out.println(name + " frames=0");
      return;
    }
    System.out.printf(
        Locale.ROOT,
        "%s frames=%d firstMs=%.1f afterMs=%.1f least=%.1f median=%.1f most=%.1f gaps=%d back=%d%n",
        name,
        own.size(),
        own.get(0).ms(),
        (own.get(0).nanos() - asked) / 1e6,
        late.get(0),
        late.get(late.size() / 2),
        late.get(late.size() - 1),
        gaps,
        back);
  }

  private List<Heard> own(long asked, double fromMs) {
    return since(asked).stream().filter(h -> Math.abs(late(h, asked, fromMs)) < NEAR_MS).toList();
  }

  private static double late(Heard h, long asked, double fromMs) {
    return (h.nanos() - asked) / 1e6 - (h.ms() - fromMs);
  }

  private void rest(String name) throws InterruptedException {
    long asked = System.nanoTime();
    TimeUnit.MILLISECONDS.sleep(500);
    List<Heard> all = since(0);
    List<Heard> later = since(asked);
    System.out.printf(
        Locale.ROOT,
        "%s silentAfterMs=%.1f last=%d%n",
        name,
        later.isEmpty() ? 0 : (later.get(later.size() - 1).nanos() - asked) / 1e6,
        all.isEmpty() ? -1 : all.get(all.size() - 1).frame());
  }
}
