package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.nio.file.StandardOpenOption.APPEND;
import static java.nio.file.StandardOpenOption.CREATE;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.target.Target;

/**
 * Firmware with the bench link on a simulated AVR, and the computer that talks to it: live_host.c.
 */
final class LiveBench {
  private static final Path HOST = Path.of("src/test/wire/live_host.c").toAbsolutePath();

  /** Where runs by hand leave their figures: docs/performance.md. */
  private static final Path FIGURES = Path.of("target/live-link.txt");

  private static final boolean BY_HAND = System.getProperty("lampwright.liveFrames") != null;

  static final String LIVE = "-DLAMPWRIGHT_LIVE=1";

  /** Of an output, in the prover's words. */
  private static final Pattern DUTY = Pattern.compile("ocr=(0x[0-9A-F]+)");

  private final SimulatedFirmware firmware;
  private final OutsideTools.Tool host;
  private final Path folder;
  private int built;

  /**
   * Compiles the computer's side.
   *
   * @param folder empty, for all that is made
   */
  LiveBench(Path folder) {
    this.folder = folder;
    this.firmware = new SimulatedFirmware(folder);
    firmware.sources().toFile().mkdirs();
    Path program = folder.resolve("live_host");
    OutsideTools.onThisMachine()
        .find("gcc", "gcc")
        .run(
            folder,
            "-std=c99",
            "-O2",
            "-Wall",
            "-Wextra",
            "-Wno-unused-parameter",
            HOST.toString(),
            "-o",
            program.toString(),
            "-lsimavr",
            "-lelf")
        .quietOut();
    this.host = new OutsideTools.Tool(program);
  }

  SimulatedFirmware firmware() {
    return firmware;
  }

  /** Exports a job and compiles it with the bench link, into a file that stays. */
  Path build(ProjectJob job, String... more) throws Exception {
    try (Stream<Path> old = Files.walk(firmware.sources())) {
      // Of a rig with inputs there are more sources.
      for (Path file : old.filter(Files::isRegularFile).toList()) {
        Files.delete(file);
      }
    }
    firmware.export(job);
    Path elf =
        firmware.compile(
            job,
            firmware.main(),
            Stream.concat(Stream.of(LIVE), Stream.of(more)).toArray(String[]::new));
    return Files.move(elf, folder.resolve("live-" + ++built + ".elf"));
  }

  /**
   * Runs it.
   *
   * @param own frames of its own show
   * @param layout number of the rig's layout, found without the code that is tested
   * @param more words for the computer's side
   */
  SimulatedFirmware.Report run(ProjectJob job, Path elf, byte[] own, String layout, String... more)
      throws IOException {
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    List<String> words = new ArrayList<>();
    words.add("elf=" + elf);
    words.add("own=" + Files.write(folder.resolve("own.bin"), own));
    words.add("mcu=" + target.controller().id());
    words.add("hz=" + target.hertz().orElseThrow());
    words.add("layout=" + layout);
    words.add("bytes=" + job.tables().get(0).layout().bytes());
    int resetUs = 0;
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      String pin = target.pins(rig).chains().get(i).orElseThrow().name();
      words.add("chain=" + pin.substring(1) + ":" + chain.bytes());
      resetUs = Math.max(resetUs, (int) chain.type().line().resetUs());
    }
    words.add("reset-us=" + resetUs);
    target.proofWords(rig).stream()
        .map(DUTY::matcher)
        .filter(Matcher::find)
        .forEach(duty -> words.add("output=" + duty.group(1)));
    words.addAll(List.of(more));
    if (words.stream().noneMatch(word -> word.startsWith("baud="))) {
      words.add("baud=500000");
    }
    OutsideTools.Result result = host.run(folder, words.toArray(String[]::new));
    String json = new String(result.out(), UTF_8) + result.errors();
    if (BY_HAND) {
      Files.writeString(FIGURES, words + " " + json, CREATE, APPEND);
    }
    return new SimulatedFirmware.Report(json);
  }
}
