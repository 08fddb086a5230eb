package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;
import lampwright.exporters.target.PinPlan;
import lampwright.exporters.target.PixelLimits;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a general simulator of the RP2040 has on its pins when it runs the exported file: every bit
 * is that of the frame table, and within the limits that are written down in {@link PixelLimits}.
 */
class Rp2040JudgeTest {
  /** From power to the first frame: boot stage, crystal, checksums. */
  private static final int START_MS = 30;

  private static final Path SAMPLES = Path.of("..", "samples");

  /** Frames of a long scene that are looked at. */
  private static final int FRAMES = 5;

  private static final int PWM_PERIOD_NS = 510_000;

  @TempDir static Path folder;
  private static Rp2040Judge judge;

  @BeforeAll
  static void findJudge() {
    judge = new Rp2040Judge(folder);
  }

  static Stream<Arguments> jobs() throws IOException {
    FirmwareJobs eight = FirmwareJobs.on("rp2040").frames(4);
    FirmwareJobs others = FirmwareJobs.on("rp2040").frames(4);
    for (int i = 0; i < BuiltInPixelTypes.all().size(); i++) {
      (i < 8 ? eight : others).chain(BuiltInPixelTypes.all().get(i).id(), 1 + i);
    }
    FirmwareJobs outputs = FirmwareJobs.on("rp2040").frames(5);
    for (int i = 0; i < 16; i++) {
      outputs.output();
    }
    return Stream.concat(
        Stream.of(
            Arguments.of("every pixel type", eight.job()),
            Arguments.of("the rest of them", others.chain("ws2812b", 3, "GP28").job()),
            Arguments.of("sixteen outputs", outputs.job()),
            Arguments.of(
                "rate of no whole microseconds",
                FirmwareJobs.on("rp2040").chain("ws2812b", 2).rate("29.97").frames(6).job()),
            Arguments.of(
                "a long chain",
                FirmwareJobs.on("rp2040").chain("sk6812-rgbw", 400).frames(3).job()),
            Arguments.of(
                "the longest frame for its chain",
                FirmwareJobs.on("rp2040").chain("ws2812b", 660).frames(4).job())),
        samples());
  }

  /** The projects that come with the program, on this controller. */
  private static Stream<Arguments> samples() throws IOException {
    List<Arguments> all = new ArrayList<>();
    try (Stream<Path> found = Files.list(SAMPLES)) {
      for (Path sample :
          found.filter(p -> p.toString().endsWith(".lampwright.json")).sorted().toList()) {
        String text = Files.readString(sample).replaceAll("\"controller\": \"[a-z0-9]+\",", "");
        Path moved = folder.resolve(sample.getFileName());
        Files.writeString(
            moved, text.replaceFirst("\"rig\": \\{", "\"rig\": {\"controller\": \"rp2040\","));
        Project project = ProjectReader.read(moved).project().orElseThrow();
        for (Scene scene : project.scenes()) {
          all.add(
              Arguments.of(
                  project.name() + ", " + scene.id(), ProjectJob.of(project, List.of(scene))));
        }
      }
    }
    return all.stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("jobs")
  void everyBitIsThatOfTheFrameTable(String name, ProjectJob job) throws Exception {
    ExportJob scene = alone(job);
    assertThat(new Uf2Exporter().facts(scene).refusals()).isEmpty();
    assertShows(scene, judge);
  }

  /** Asserts that the file that is exported for a job shows what its frame table holds. */
  static void assertShows(ExportJob job, Rp2040Judge judge) throws Exception {
    assertShows(job, judge.run(Rp2040Judge.uf2(job), length(job)));
  }

  private static int length(ExportJob job) {
    double frameMs = 1000 / job.scene().framesPerSecond().doubleValue();
    // Not all of a long scene; of a short one the seam too.
    return START_MS + (int) Math.ceil(frameMs * Math.min(FRAMES + 3, job.table().frameCount() + 3));
  }

  private static ExportJob alone(ProjectJob job) {
    return ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT);
  }

  private static void assertShows(ExportJob job, Rp2040Judge.Run run) {
    assertThat(run.errors()).isEmpty();
    assertThat(run.exit()).isZero();
    Rig rig = job.project().rig();
    PinPlan plan = Target.of(rig).pins(rig);
    byte[] table = TestJobs.table(job);
    int frameBytes = job.table().layout().bytes();
    int frames = job.table().frameCount();
    double frameNs = 1e9 / job.scene().framesPerSecond().doubleValue();
    int at = 0;
    for (int c = 0; c < rig.chains().size(); c++) {
      Chain chain = rig.chains().get(c);
      List<Rp2040Judge.Burst> bursts = run.bursts(number(plan.chains().get(c)), chain.bytes());
      PixelLimits limits = PixelLimits.of(chain.type());
      assertThat(bursts).as(chain.id()).hasSizeGreaterThanOrEqualTo(Math.min(frames, FRAMES));
      for (int f = 0; f < bursts.size(); f++) {
        int from = f % frames * frameBytes + at;
        double threshold = limits.thresholdNs();
        assertThat(bursts.get(f).bytes(threshold))
            .as(chain.id() + ", frame " + f)
            .isEqualTo(Arrays.copyOfRange(table, from, from + chain.bytes()));
        assertThat(bursts.get(f).bits()).allMatch(bit -> isWithin(limits, bit, threshold));
      }
      // Decoding takes a time of its own for every frame, and no frame waits for another.
      long first = bursts.get(0).ns();
      for (int f = 1; f < bursts.size(); f++) {
        assertThat(bursts.get(f).ns() - first - f * frameNs).isBetween(-400_000.0, 400_000.0);
      }
      at += chain.bytes();
    }
    for (int o = 0; o < rig.outputs().size(); o++) {
      assertDuties(run, number(plan.outputs().get(o)), table, frameBytes, frames, at + o, frameNs);
    }
  }

  private static int number(Optional<Pin> pin) {
    return Integer.parseInt(pin.orElseThrow().name().substring(2));
  }

  private static boolean isWithin(PixelLimits limits, Rp2040Judge.Bit bit, double threshold) {
    boolean one = bit.highNs() > threshold;
    double all = bit.highNs() + bit.lowNs();
    return bit.highNs() >= limits.leastHigh(one)
        && bit.highNs() <= limits.greatestHigh(one)
        && (bit.lowNs() == 0
            || (bit.lowNs() >= limits.leastLow(one)
                && bit.lowNs() <= limits.greatestLow(one)
                && all >= limits.leastBit()
                && all <= limits.greatestBit()));
  }

  /** Whole periods of the PWM are high for the duty of the frame that was on. */
  private static void assertDuties(
      Rp2040Judge.Run run,
      int pin,
      byte[] table,
      int frameBytes,
      int frames,
      int at,
      double frameNs) {
    List<Rp2040Judge.Edge> edges = run.edges().getOrDefault(pin, List.of());
    List<Integer> seen = new ArrayList<>();
    for (int i = 0; i + 2 < edges.size(); i++) {
      long period = edges.get(i + 2).ns() - edges.get(i).ns();
      if (edges.get(i).high() && Math.abs(period - PWM_PERIOD_NS) < 100) {
        seen.add((int) Math.round((edges.get(i + 1).ns() - edges.get(i).ns()) / 2000.0));
      }
    }
    List<Integer> wanted = new ArrayList<>();
    for (int f = 0; f < frames; f++) {
      wanted.add(table[f * frameBytes + at] & 0xFF);
    }
    assertThat(wanted).as("duties on GP" + pin).containsAll(seen);
    long lit = wanted.stream().limit(FRAMES).filter(duty -> duty > 0 && duty < 255).count();
    if (lit > 0 && frameNs > 2 * PWM_PERIOD_NS) {
      assertThat(seen).as("duties on GP" + pin).isNotEmpty();
    }
  }

  @Test
  void coreSleepsBetweenFrames() throws Exception {
    ExportJob job = alone(FirmwareJobs.on("rp2040").chain("ws2812b", 8).frames(4).job());
    assertThat(judge.run(Rp2040Judge.uf2(job), 200).asleep()).isGreaterThan(0.9);
  }

  /** The folder's own build, by the command that its README gives. */
  @Test
  void folderBuildsAndPlaysTheSame(@TempDir Path built) throws Exception {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.findCompiler(
        "arm-none-eabi-gcc", "gcc-arm-none-eabi", "string.h", "libnewlib-arm-none-eabi");
    tools.find("gcc", "gcc");
    ProjectJob job =
        FirmwareJobs.on("rp2040").chain("sk6812-rgbw", 5).chain("ws2812b", 7).output().job();
    new FirmwareExporter()
        .export(
            job,
            name -> {
              Path file = built.resolve(name);
              Files.createDirectories(file.resolveSibling(""));
              return open(file);
            },
            Progress.SILENT);
    OutsideTools.Result made = tools.find("make", "make").run(built, "HOST_CC=gcc");
    assertThat(made.errors()).isEmpty();
    assertThat(made.exit()).isZero();
    assertShows(alone(job), judge.run(Files.readAllBytes(built.resolve("show.uf2")), 150));
  }

  private static OutputStream open(Path file) throws IOException {
    return Files.newOutputStream(file);
  }

  /** A file that is cut is none: the boot ROM waits for the rest of it. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 511, 512, 513, 40_000})
  void cutFileIsRefused(int bytes) throws Exception {
    byte[] whole = Rp2040Judge.uf2(alone(FirmwareJobs.on("rp2040").chain("ws2812b", 3).job()));
    Rp2040Judge.Run run = judge.run(Arrays.copyOf(whole, bytes), 60);
    assertThat(run.exit()).isEqualTo(1);
    assertThat(run.edges()).isEmpty();
  }

  /**
   * A changed byte of the file: refused, or dark, or where nothing reads it, right; never other
   * light. One of each part of the file: DamagedUf2Test does the same for every byte, on our model.
   */
  @ParameterizedTest
  @ValueSource(
      ints = {
        // Boot stage, its checksum, the program's head and code, table, board and packed data.
        0x8,
        0xFC,
        0x104,
        0x10C,
        0x800,
        0x1500,
        0x8000,
        0x800A,
        0x8010,
        0x8024,
        0x802A,
        0x8094,
        0x80A0,
        0x8FFF
      })
  void changedByteNeverGivesOtherLight(int at) throws Exception {
    ExportJob job = alone(FirmwareJobs.on("rp2040").chain("ws2812b", 3).frames(4).job());
    byte[] file = Rp2040Judge.uf2(job);
    file[at / 256 * 512 + 32 + at % 256] ^= 0x10;
    assertRightOrDark(job, judge.run(file, 70));
  }

  /** Words of the blocks themselves: magic numbers, flags, address, counts, family. */
  @ParameterizedTest
  @ValueSource(ints = {0, 5, 9, 13, 17, 20, 25, 28, 31, 508, 511})
  void changedBlockNeverGivesOtherLight(int at) throws Exception {
    ExportJob job = alone(FirmwareJobs.on("rp2040").chain("ws2812b", 3).frames(4).job());
    byte[] file = Rp2040Judge.uf2(job);
    file[3 * 512 + at] ^= 0x01;
    assertRightOrDark(job, judge.run(file, 70));
  }

  private static void assertRightOrDark(ExportJob job, Rp2040Judge.Run run) {
    byte[] table = TestJobs.table(job);
    int bytes = job.table().layout().bytes();
    List<Rp2040Judge.Burst> bursts = run.bursts(0, bytes);
    assertThat(run.edges().keySet()).isSubsetOf(0);
    for (int f = 0; f < bursts.size(); f++) {
      byte[] shown = bursts.get(f).bytes(600);
      byte[] right = Arrays.copyOfRange(table, f % 4 * bytes, f % 4 * bytes + bytes);
      assertThat(shown).isIn(right, new byte[bytes]);
    }
  }
}
