package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The signals of whole firmware, exported, compiled and run as a builder proves it, read by
 * sigrok-cli's decoder for addressable LEDs (Debian sigrok-cli, libsigrokdecode: rgb_led_ws281x),
 * which knows nothing of us: its bits are those of the frame table that {@code --as bin} writes. It
 * takes longer for a second of signal than all else together, so that it gets the first frames and
 * those around the seam, with short pauses between them; the simulator's judge has seen every bit
 * and every pause before.
 */
class WaveformTest {
  private static final Pattern VARIABLE =
      Pattern.compile("\\$var wire 1 \\S+ (\\S+) \\$end", Pattern.MULTILINE);

  // Edges are at multiples of 62.5 or 125 ns, or of 40 ns on an RP2040.
  private static final int NANOSECONDS_A_SAMPLE = 25;
  private static final int RP2040_NANOSECONDS_A_SAMPLE = 40;

  private static final int FRAMES_READ = 8;

  // Nothing pauses so long within a frame, and everything does between two.
  private static final long PAUSE_NS = 390_000;

  // Most of a frame's time is a pause, which the decoder takes in sample by sample.
  private static final long PAUSE_LEFT_NS = 400_000;

  @TempDir Path folder;
  private int sampleNs = NANOSECONDS_A_SAMPLE;

  @BeforeAll
  static void lookForTools() {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.findSimulator();
    tools.find("sigrok-cli", "sigrok-cli");
  }

  // Most of the time goes into the simulator and the decoder, which use one processor each.
  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @CsvSource({
    "recovery-tractor, 8, working road towed-backwards",
    "mountain-rescue, 7, standing-by call-out",
    "harbour-dusk, 1, dusk",
    "bench-rgbw, 2, walk ramps"
  })
  void samplesAreProvedAndAnotherProgramReadsTheirFrames(String name, int scenes, String read)
      throws IOException, InterruptedException {
    Path project = sample(name);
    Run run = Run.of("prove", project, "--waveform", folder.resolve("waves"));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out().split(" proved ", -1)).hasSize(scenes + 1);
    assertThat(run.out()).doesNotContain("FAILED");
    for (String scene : read.split(" ", -1)) {
      assertRead(project, scene);
    }
  }

  @Test
  void anotherProgramReadsChainsOfTwoKinds() throws IOException, InterruptedException {
    String project =
        """
        {"lampwright": 1,
         "rig": {"controller": "atmega328p",
           "chains": [{"id": "a", "pixelType": "ws2812b", "pixels": 5},
                      {"id": "b", "pixelType": "sk6812-rgbw", "pixels": 3}],
           "lamps": [{"id": "l", "pixels": [{"chain": "a", "count": 5}]},
                     {"id": "m", "pixels": [{"chain": "b", "count": 3}]}]},
         "scenes": [{"id": "s", "lengthMs": 620, "framesPerSecond": 50, "loop": true, "tracks": [
           {"lamps": ["l"], "cues": [{"lengthMs": 620, "pattern":
             {"kind": "chase", "colour": "#FFA000", "stepMs": 70, "tail": 1, "bounce": true}}]},
           {"lamps": ["m"], "cues": [{"lengthMs": 620, "pattern":
             {"kind": "flicker", "seed": 7, "depth": 0.9, "rateHz": 25}}]}]}]}
        """;
    Path file = Files.writeString(folder.resolve("two.lampwright.json"), project);
    assertProvedAndRead(file, "s");
  }

  /** One pixel for one frame, and as many as 256 over the seam. */
  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @CsvSource({"1, 20", "256, 420"})
  void anotherProgramReadsTheShortestAndALongChain(int pixels, int lengthMs)
      throws IOException, InterruptedException {
    String project =
        """
        {"lampwright": 1,
         "rig": {"controller": "atmega328p", "supplyLimitMilliamps": 20000,
           "chains": [{"id": "a", "pixelType": "ws2812b", "pixels": %1$d}],
           "lamps": [{"id": "l", "pixels": [{"chain": "a", "count": %1$d}]}]},
         "scenes": [{"id": "s", "lengthMs": %2$d, "framesPerSecond": 50, "loop": true, "tracks": [
           {"lamps": ["l"], "cues": [{"lengthMs": %2$d, "pattern":
             {"kind": "colour-cycle", "periodMs": 1700, "spread": 1}}]}]}]}
        """;
    Path file = folder.resolve("chain.lampwright.json");
    assertProvedAndRead(Files.writeString(file, project.formatted(pixels, lengthMs)), "s");
  }

  /** Signals of the model, from the UF2 file; two parts whose 1 is high for most of the bit. */
  @Test
  void anotherProgramReadsTheFramesOfAnRp2040() throws IOException, InterruptedException {
    String project =
        """
        {"lampwright": 1,
         "rig": {"controller": "rp2040",
           "chains": [{"id": "a", "pixelType": "ws2812b", "pixels": 5},
                      {"id": "b", "pixelType": "ws2815", "pixels": 2, "pin": "GPIO21"}],
           "lamps": [{"id": "l", "pixels": [{"chain": "a", "count": 5}]},
                     {"id": "m", "pixels": [{"chain": "b", "count": 2}]}]},
         "scenes": [{"id": "s", "lengthMs": 30, "framesPerSecond": 200, "loop": true, "tracks": [
           {"lamps": ["l"], "cues": [{"lengthMs": 30, "pattern":
             {"kind": "colour-cycle", "periodMs": 30, "spread": 1}}]},
           {"lamps": ["m"], "cues": [{"lengthMs": 30, "pattern":
             {"kind": "flicker", "seed": 7, "depth": 0.9, "rateHz": 50}}]}]}]}
        """;
    sampleNs = RP2040_NANOSECONDS_A_SAMPLE;
    assertProvedAndRead(Files.writeString(folder.resolve("rp2040.lampwright.json"), project), "s");
    assertThat(pins(folder.resolve("waves/s.vcd"))).containsExactly("GP0", "GP21");
  }

  @Test
  void rigWithoutAChainHasNoWaveform() throws IOException {
    String project =
        """
        {"lampwright": 1, "rig": {"outputs": [{"id": "o"}], "lamps": [{"id": "l", "output": "o"}]},
         "scenes": [{"id": "s", "lengthMs": 500, "tracks": []}]}
        """;
    Path file = Files.writeString(folder.resolve("bare.lampwright.json"), project);
    Run run = Run.of("prove", file, "--waveform", folder.resolve("waves"));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--waveform: the rig has no chain");
    assertThat(folder.resolve("waves")).doesNotExist();
  }

  @Test
  void folderThatCannotBeIsRefusedBeforeAnythingIsProved() throws IOException {
    Path file = Files.writeString(folder.resolve("waves"), "");
    Run run = Run.of("prove", sample("bench-rgbw"), "--waveform", file);
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("could not make the folder");
  }

  private void assertProvedAndRead(Path project, String scene)
      throws IOException, InterruptedException {
    Run proved = Run.of("prove", project, "--waveform", folder.resolve("waves"));
    assertThat(proved.err()).isEmpty();
    assertThat(proved.code()).isZero();
    assertRead(project, scene);
  }

  private void assertRead(Path project, String scene) throws IOException, InterruptedException {
    Rig rig = ProjectReader.read(project).project().orElseThrow().rig();
    Path waves = folder.resolve("waves");
    assertThat(Run.of("export", project, "--scene", scene, "--as", "bin", "--to", folder).code())
        .isZero();
    byte[] table = Files.readAllBytes(folder.resolve(scene + ".bin"));
    int frameBytes = rig.chains().stream().mapToInt(Chain::bytes).sum() + rig.outputs().size();
    int frames = table.length / frameBytes;
    Path vcd = folder.resolve("part.vcd");
    List<Integer> parts = cut(waves.resolve(scene + ".vcd"), frames, vcd);
    List<String> pins = pins(vcd);
    assertThat(pins).hasSameSizeAs(rig.chains());
    int at = 0;
    for (int c = 0; c < pins.size(); c++) {
      int bytes = rig.chains().get(c).bytes();
      List<String> read = read(vcd, pins.get(c));
      assertThat(read).as("frames on %s", pins.get(c)).hasSameSizeAs(parts);
      for (int i = 0; i < read.size(); i++) {
        int f = parts.get(i);
        String want = bits(table, f % frames * frameBytes + at, bytes);
        assertThat(read.get(i)).as("frame %d on %s", f, pins.get(c)).isEqualTo(want);
      }
      at += bytes;
    }
  }

  /**
   * Leaves the first frames and those around the seam of a dump, and of each pause what tells it
   * from a frame; gives their numbers.
   */
  private List<Integer> cut(Path whole, int frames, Path to) throws IOException {
    List<String> lines = new ArrayList<>();
    Map<Integer, Integer> changes = new TreeMap<>();
    long before = 0;
    long taken = 0;
    int frame = -1;
    boolean kept = true;
    for (String line : Files.readAllLines(whole)) {
      if (line.startsWith("#")) {
        long now = Long.parseLong(line.substring(1));
        if (frame < 0 ? now > 0 : now - before >= PAUSE_NS) {
          frame++;
          kept = frame < FRAMES_READ || Math.abs(frame - frames) <= FRAMES_READ / 2;
        }
        // Whole steps of the decoder's clock, so that each edge is seen at its own time.
        long left = kept ? PAUSE_LEFT_NS : 0;
        taken += Math.max(0, now - before - left) / sampleNs * sampleNs;
        before = now;
        if (kept) {
          lines.add("#" + (now - taken));
        }
      } else if (kept) {
        lines.add(line);
        if (frame >= 0) {
          changes.merge(frame, 1, Integer::sum);
        }
      }
    }
    // A first edge after the last whole frame is none, nor is the pause at the end.
    List<Integer> numbers = new ArrayList<>(changes.keySet());
    numbers.removeIf(number -> changes.get(number) < 2 * Byte.SIZE);
    assertThat(numbers).contains(0, frames);
    Files.write(to, lines);
    return numbers;
  }

  private static List<String> pins(Path vcd) throws IOException {
    List<String> pins = new ArrayList<>();
    Matcher variable = VARIABLE.matcher(Files.readString(vcd));
    while (variable.find()) {
      pins.add(variable.group(1));
    }
    return pins;
  }

  /** The bits of each frame, as sigrok's decoder reads them. */
  private List<String> read(Path vcd, String pin) throws IOException, InterruptedException {
    Process sigrok =
        new ProcessBuilder(
                "sigrok-cli",
                "-I",
                "vcd:downsample=" + sampleNs,
                "-i",
                vcd.toString(),
                "-P",
                "rgb_led_ws281x:din=" + pin,
                "-A",
                "rgb_led_ws281x=bit:reset")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    List<String> frames = new ArrayList<>();
    StringBuilder frame = new StringBuilder();
    String said = new String(sigrok.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    for (String line : (said + "end\n").lines().toList()) {
      String word = line.substring(line.lastIndexOf(' ') + 1);
      if (word.equals("0") || word.equals("1")) {
        frame.append(word);
      } else if (frame.length() > 0) {
        frames.add(frame.toString());
        frame.setLength(0);
      }
    }
    assertThat(sigrok.waitFor()).isZero();
    return frames;
  }

  private static String bits(byte[] table, int from, int count) {
    StringBuilder bits = new StringBuilder();
    for (int i = from; i < from + count; i++) {
      bits.append(Integer.toBinaryString(256 | (table[i] & 255)), 1, 9);
    }
    return bits.toString();
  }
}
