package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code lampwright live} as it is typed. */
@Timeout(120)
class LiveTest {
  private static final Path DUSK = Run.sample("harbour-dusk");
  private static final Path FLASHING = Run.sample("mountain-rescue");

  /** No other test has this address of the loopback network. */
  private static final String HERE = "127.0.18.1";

  @TempDir private Path folder;

  @BeforeEach
  void stateOfItsOwn() {
    System.setProperty("lampwright.state", folder.resolve("state").toString());
  }

  @AfterEach
  void stateOfTheUser() {
    System.clearProperty("lampwright.state");
  }

  private static Run live(String words) {
    List<Object> all = new ArrayList<>(List.of("live"));
    all.addAll(Arrays.asList((Object[]) words.split(" ")));
    return Run.of(all.toArray());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--port x | Missing required parameter: 'PROJECT'",
        "P | needs one of --port NAME and --e131 HOST",
        "P --port x --e131 y | needs one of --port NAME and --e131 HOST",
        "--list --port x | --list: not with --port or --e131",
        "P --port x --baud 9600 | --baud: 9600: must be 500000 or 115200",
        "P --e131 y --baud 500000 | --baud: needs --port",
        "P --port x --universe 1 | --universe: needs --e131",
        "P --e131 y --universe 0 | --universe: must be between 1 and 63,999",
        "P --e131 y --universe 64000 | --universe: must be between 1 and 63,999",
        "P --e131 y --universe 63999 | --universe: first universe",
        "P --e131 y --priority 201 | --priority: must be between 0 and 200",
        "P --e131 y --interface eth0 | --interface: needs --e131 multicast",
        "P --port x --brightness 0 | --brightness: must be between 1 and 100",
        "P --port x --brightness 101 | --brightness: must be between 1 and 100",
        "P --port x --seconds 0 | --seconds: must be more than 0",
        "P --port x --seconds NaN | --seconds: must be more than 0",
        "P --port x --scene nosuch | --scene: nosuch: must be",
        "P --port x --scene dusk --drive f | --scene: not with --drive"
      })
  void wrongCommandLinesAreRefused(String words, String why) {
    Run run = live(words.replace("P ", DUSK + " ").replaceFirst("^P$", DUSK.toString()));
    assertThat(run.err()).contains(why);
    assertThat(run.code()).isEqualTo(ExitCode.WRONG_COMMAND_LINE);
  }

  @Test
  void portsAreListed() {
    Run run = live("--list");
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isEqualTo(ExitCode.DONE);
  }

  @Test
  void portThatIsNotThereIsNamedAfterTheRate() {
    Run run = live(DUSK + " --port no-such-port-18");
    assertThat(run.code()).isEqualTo(ExitCode.NO_READ_OR_WRITE);
    assertThat(run.err()).contains("lampwright: no-such-port-18: no such port.");
    assertThat(run.out()).contains("500000 baud", "frames/s", "25 % bench brightness");
  }

  @Test
  void whatFailsTheFlashCheckIsRefusedUntilItIsAllowed() {
    Run refused = live(FLASHING + " --port no-such-port-18");
    assertThat(refused.code()).isEqualTo(ExitCode.PROJECT_HAS_ERRORS);
    assertThat(refused.err())
        .contains("times per second", "the limit is 3", "--allow-flashes plays it.");
    Run allowed = live(FLASHING + " --port no-such-port-18 --allow-flashes");
    assertThat(allowed.code()).isEqualTo(ExitCode.NO_READ_OR_WRITE);
    assertThat(allowed.err()).contains("Caution: scene", "no such port");
  }

  @Test
  void unknownHostIsNamed() {
    Run run = live(DUSK + " --e131 no-such-host-18.invalid");
    assertThat(run.code()).isEqualTo(ExitCode.NO_READ_OR_WRITE);
    assertThat(run.err()).contains("no-such-host-18.invalid: no such host");
  }

  @Test
  void universesReachAHostAndEnd() throws IOException {
    try (DatagramSocket socket = new DatagramSocket(5568, InetAddress.getByName(HERE))) {
      socket.setSoTimeout(60_000);
      CompletableFuture<List<byte[]>> received =
          CompletableFuture.supplyAsync(() -> packets(socket));
      Run run = live(DUSK + " --e131 " + HERE + " --universe 7 --priority 50 --seconds 1");
      assertThat(run.err()).isEqualTo(HERE + ": sending" + System.lineSeparator());
      assertThat(run.code()).isEqualTo(ExitCode.DONE);
      List<byte[]> packets = received.join();
      assertThat(run.out()).contains("Universe 7: chain", packets.size() + " packets sent");
      // ANSI E1.31-2018, table 4-1: priority at 108, options at 112, universe at 113.
      assertThat(packets).allMatch(packet -> packet[108] == 50 && packet[113] == 0);
      assertThat(packets.get(0)[114]).isEqualTo((byte) 7);
      assertThat(packets.subList(packets.size() - 6, packets.size()))
          .allMatch(packet -> packet[112] == 0x40);
    }
  }

  // To the third end of both universes.
  private static List<byte[]> packets(DatagramSocket socket) {
    List<byte[]> packets = new ArrayList<>();
    try {
      for (int ends = 0; ends < 6; ) {
        DatagramPacket packet = new DatagramPacket(new byte[700], 700);
        socket.receive(packet);
        packets.add(Arrays.copyOf(packet.getData(), packet.getLength()));
        ends += packet.getData()[112] == 0x40 ? 1 : 0;
      }
      return packets;
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
