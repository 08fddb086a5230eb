package lampwright.app.workshop.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The guide sound through the system's own sound server: a PulseAudio of the test's own, whose only
 * device is heard by nobody and recorded by its own program.
 */
@Timeout(120)
class DeviceSoundTest {
  /** Three frames of 50 per second; the least of a thousand, as a busy machine is late itself. */
  private static final double OFF_MS = 60;

  @TempDir private Path folder;
  private final List<Process> running = new ArrayList<>();

  @AfterEach
  void endAll() {
    running.forEach(Process::destroy);
  }

  @Test
  void whatIsHeardIsTheFileInStepWithTheClock() throws IOException, InterruptedException {
    OutsideTools tools = OutsideTools.onThisMachine();
    String server = tools.find("pulseaudio", "pulseaudio").program().toString();
    String recorder = tools.find("parec", "pulseaudio-utils").program().toString();
    tools.findFile(Path.of("/usr/share/alsa/alsa.conf.d/50-pulseaudio.conf"), "libasound2-plugins");
    Files.writeString(folder.resolve(".asoundrc"), "pcm.!default { type pulse }\n");
    Path socket = folder.resolve("socket");
    start(
        "server",
        List.of(
            server,
            "-n",
            "--daemonize=no",
            "--use-pid-file=no",
            "--exit-idle-time=-1",
            "--disable-shm=yes",
            "-L",
            "module-native-protocol-unix auth-anonymous=1 socket=" + socket,
            "-L",
            "module-null-sink sink_name=heard rate=48000 channels=2 format=s16le"));
    while (!Files.exists(socket)) {
      assertThat(running.get(0).isAlive()).as(said("server")).isTrue();
      TimeUnit.MILLISECONDS.sleep(20);
    }
    Process played =
        start(
            "played",
            List.of(
                "sh",
                "-c",
                recorder
                    + " --raw --format=s16le --rate=48000 --channels=2 --latency-msec=5"
                    + " -d heard.monitor | exec \"$0\" \"$@\"",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                HeardSound.class.getName(),
                folder.toString()));
    assertThat(played.waitFor()).as(said("played")).isZero();
    Map<String, Map<String, Double>> found = values(said("played"));
    assertThat(found)
        .as(said("played"))
        .containsOnlyKeys("beginning", "stopped", "middle", "back", "end", "over");
    for (String part : List.of("beginning", "middle", "back", "end")) {
      Map<String, Double> of = found.get(part);
      // Samples in the file's order, none changed; what is left out to be in step is no fault.
      assertThat(of).as(part).containsEntry("back", 0.0);
      assertThat(of.get("least")).as(part).isBetween(-OFF_MS, OFF_MS);
    }
    assertThat(found.get("stopped").get("silentAfterMs")).isLessThan(400);
    // To the last of six seconds' frames.
    assertThat(found.get("over")).containsEntry("last", 287_999.0);
  }

  private Process start(String name, List<String> command) throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.redirectOutput(folder.resolve(name + ".txt").toFile());
    builder.redirectInput(new File("/dev/null"));
    builder.environment().put("HOME", folder.toString());
    builder.environment().put("XDG_RUNTIME_DIR", folder.toString());
    builder.environment().put("PULSE_SERVER", "unix:" + folder.resolve("socket"));
    Process process = builder.start();
    running.add(process);
    return process;
  }

  private String said(String name) throws IOException {
    return Files.readString(folder.resolve(name + ".txt"));
  }

  private static Map<String, Map<String, Double>> values(String said) {
    Map<String, Map<String, Double>> all = new HashMap<>();
    for (String line : said.lines().filter(l -> l.contains("=")).toList()) {
      String[] words = line.split(" ", -1);
      Map<String, Double> of = new HashMap<>();
      for (String word : words) {
        int is = word.indexOf('=');
        if (is > 0) {
          of.put(word.substring(0, is), Double.parseDouble(word.substring(is + 1)));
        }
      }
      all.put(words[0], of);
    }
    return all;
  }
}
