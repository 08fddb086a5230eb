package lampwright.app.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The link on ports of the system: pairs of pseudo-terminals, made by socat. */
@Timeout(120)
class SerialLinkTest {
  private static final LinkIdentity RIG = new LinkIdentity(30, 0xBEEF);

  @TempDir private Path folder;
  private final List<Process> running = new ArrayList<>();
  private volatile boolean over;

  @AfterEach
  void endAll() {
    over = true;
    running.forEach(Process::destroy);
  }

  /** The host's end of a new pair, whose other end is {@code controller}. */
  private String pair() throws IOException, InterruptedException {
    OutsideTools.Tool socat = OutsideTools.onThisMachine().find("socat", "socat");
    Path host = folder.resolve("host");
    Path controller = folder.resolve("controller");
    running.add(
        new ProcessBuilder(
                socat.program().toString(),
                "pty,raw,echo=0,link=" + host,
                "pty,raw,echo=0,link=" + controller)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("socat").toFile())
            .start());
    await(() -> Files.exists(host) && Files.exists(controller));
    // The library knows the devices, not links to them.
    return host.toRealPath().toString();
  }

  private void play(SimulatedController controller) throws IOException {
    RandomAccessFile end = new RandomAccessFile(folder.resolve("controller").toFile(), "rw");
    Thread thread =
        new Thread(
            () -> {
              try (end) {
                for (int next = end.read(); next >= 0 && !over; next = end.read()) {
                  var answer = controller.take((byte) next);
                  if (answer.isPresent()) {
                    end.write(answer.get());
                  }
                }
              } catch (IOException closed) {
                // The pair is gone.
              }
            },
            "simulated controller");
    thread.setDaemon(true);
    thread.start();
  }

  private static void await(BooleanSupplier condition) throws InterruptedException {
    while (!condition.getAsBoolean()) {
      TimeUnit.MILLISECONDS.sleep(5);
    }
  }

  private static FrameFeed counting() {
    byte[][] frames = new byte[100][];
    for (int i = 0; i < frames.length; i++) {
      frames[i] = new byte[RIG.frameBytes()];
      java.util.Arrays.fill(frames[i], (byte) i);
    }
    return nanos -> frames[(int) (nanos / 10_000_000 % frames.length)];
  }

  private record Started(LiveLink link, Thread thread, List<LinkState> states) {}

  private static Started start(String port, Baud baud) {
    List<LinkState> states = Collections.synchronizedList(new ArrayList<>());
    LiveLink link =
        new LiveLink(
            new LiveLink.Settings(port, baud, RIG),
            new SerialPorts(),
            counting(),
            states::add,
            System::nanoTime);
    Thread thread = new Thread(link, "link");
    thread.setDaemon(true);
    thread.start();
    return new Started(link, thread, states);
  }

  private static boolean has(Started started, Class<? extends LinkState> kind) {
    synchronized (started.states()) {
      return started.states().stream().anyMatch(kind::isInstance);
    }
  }

  @Test
  void framesReachAControllerAtBothRates() throws IOException, InterruptedException {
    String port = pair();
    SimulatedController controller = new SimulatedController(30, 0xBEEF, 1);
    play(controller);
    for (Baud baud : Baud.values()) {
      Started started = start(port, baud);
      await(() -> started.link().figures().taken() > 20 || !started.thread().isAlive());
      started.link().end();
      started.thread().join();
      assertThat(started.states()).anyMatch(LinkState.Live.class::isInstance);
      assertThat(started.states().get(started.states().size() - 1))
          .isEqualTo(new LinkState.Closed());
      assertThat(started.link().figures().damaged()).isZero();
    }
    assertThat(controller.shown())
        .hasSizeGreaterThan(20)
        .allSatisfy(frame -> assertThat(frame).containsOnly(frame[0]));
  }

  @Test
  void wrongRigIsSaidAtOnce() throws IOException, InterruptedException {
    String port = pair();
    play(new SimulatedController(33, 0xBEEF, 1));
    Started started = start(port, Baud.FAST);
    started.thread().join();
    assertThat(started.states())
        .endsWith(
            new LinkState.Failed(new LinkTrouble.OtherRig(RIG, new LinkIdentity(33, 0xBEEF))));
  }

  @Test
  void portThatGoesAwayIsLostAndOpenedAgain() throws IOException, InterruptedException {
    String port = pair();
    play(new SimulatedController(30, 0xBEEF, 1));
    Started started = start(port, Baud.FAST);
    await(() -> has(started, LinkState.Live.class));
    running.forEach(Process::destroy);
    await(() -> has(started, LinkState.Lost.class));
    started.link().end();
    started.thread().join();
    assertThat(started.states()).doesNotHaveAnyElementsOfTypes(LinkState.Failed.class);
  }

  @Test
  void portThatIsNotThereIsNamed() {
    assertThatThrownBy(() -> new SerialPorts().open("no-such-port-18", Baud.FAST))
        .isInstanceOf(LinkException.class)
        .hasMessageStartingWith("no-such-port-18: no such port.");
  }

  @Test
  void portThatIsOpenIsBusy() throws IOException, InterruptedException, LinkException {
    String port = pair();
    SerialPorts ports = new SerialPorts();
    try (Transport first = ports.open(port, Baud.FAST)) {
      assertThat(first.read(new byte[1])).isZero();
      assertThatThrownBy(() -> ports.open(port, Baud.FAST))
          .isInstanceOf(LinkException.class)
          .extracting(thrown -> ((LinkException) thrown).trouble())
          .isEqualTo(new LinkTrouble.Busy(port));
    }
  }

  @Test
  void fileThatIsNoPortIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "text");
    assertThatThrownBy(() -> new SerialPorts().open(file.toString(), Baud.FAST))
        .isInstanceOf(LinkException.class);
    assertThat(file).hasContent("text");
  }
}
