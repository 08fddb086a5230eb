package lampwright.app.command;

import com.google.common.base.Splitter;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.ShowClock;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ExporterRegistry;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.DriveSignal;
import lampwright.exporters.firmware.FirmwareExporter;
import lampwright.exporters.firmware.FirmwareProof;
import lampwright.exporters.table.TableExporters;

/** Builds firmware and runs it on the simulator, in a folder of its own. */
final class ProofBench implements Prover {
  private static final Map<String, String> PACKAGES =
      new TreeMap<>(Map.of("gcc", "gcc", "avr-gcc", "gcc-avr and avr-libc"));

  private final Path folder;

  ProofBench(Path folder) {
    this.folder = folder;
  }

  /**
   * Looks for the compilers.
   *
   * @throws IOException naming what is missing and the Debian packages that bring it
   */
  private static void requireTools() throws IOException {
    List<String> missing = new ArrayList<>();
    PACKAGES.forEach(
        (tool, brings) -> {
          if (!onPath(tool)) {
            missing.add(tool + " (Debian package " + brings + ")");
          }
        });
    if (!missing.isEmpty()) {
      throw new IOException("a proof requires " + String.join(", ", missing));
    }
  }

  /** Compiles the prover. */
  @Override
  public void prepare() throws IOException, InterruptedException {
    requireTools();
    Path source = Files.write(folder.resolve("prover.c"), FirmwareProof.proverSource());
    Output built =
        run("gcc", "-std=c99", "-O2", source.toString(), "-o", prover(), "-lsimavr", "-lelf");
    if (built.code != 0) {
      throw new IOException(
          "the prover does not compile; it requires the Debian packages simavr, libsimavr-dev and"
              + " libelf-dev; gcc says: "
              + built.text);
    }
  }

  @Override
  public void requireExportable(Project project, List<Scene> scenes) {
    FirmwareExporter exporter = new FirmwareExporter();
    for (Scene scene : scenes) {
      var refusals = exporter.facts(ProjectJob.of(project, List.of(scene))).refusals();
      ExportRefusedException.throwIfAny(exporter.key(), Optional.empty(), refusals);
    }
  }

  @Override
  public Path waveform(Scene scene) {
    return folder.resolve(scene.id()).resolve(scene.id() + ".vcd");
  }

  @Override
  public Proof prove(Project project, Scene scene)
      throws IOException, CancelledException, InterruptedException {
    Path firmware = folder.resolve(scene.id());
    FirmwareProof proof = new FirmwareProof(project.rig());
    // One scene by itself, whatever the situations are.
    Project plain = Project.SITUATIONS.with(project, List.of());
    ProjectJob alone = ProjectJob.of(plain, List.of(scene));
    new FirmwareExporter().export(alone, name -> file(firmware, name), Progress.SILENT);
    ExportJob job = ExportJob.of(project, scene, ExportOptions.DEFAULT);
    ExporterRegistry.of(TableExporters.all())
        .find("bin")
        .orElseThrow()
        .export(job, name -> file(firmware, name), Progress.SILENT);
    Path elf = firmware.resolve("show.elf");
    Output compiled = run(compiler(firmware, elf, proof));
    if (compiled.code != 0) {
      throw new IOException("the firmware does not compile: " + compiled.text);
    }
    List<String> words = new ArrayList<>(List.of(prover(), "--elf", elf.toString()));
    words.addAll(List.of("--table", firmware.resolve(scene.id() + ".bin").toString()));
    if (!project.rig().chains().isEmpty()) {
      words.addAll(List.of("--vcd", waveform(scene).toString()));
      words.addAll(List.of("--vcd-frames", Integer.toString(Prover.framesShown(job))));
    }
    words.addAll(proof.options(scene));
    Output report = run(words.toArray(String[]::new));
    if (report.code > 1) {
      throw new IOException("the prover stopped: " + report.text);
    }
    return Proof.of(report.text);
  }

  @Override
  public Proof prove(Project project, ShowClock clock, DriveSignal signal, byte[] frames, int count)
      throws IOException, CancelledException, InterruptedException {
    Path firmware = folder.resolve("drive");
    FirmwareProof proof = new FirmwareProof(project.rig());
    ProjectJob job = ProjectJob.of(project, project.scenes());
    new FirmwareExporter().export(job, name -> file(firmware, name), Progress.SILENT);
    Path table = Files.write(firmware.resolve("drive.bin"), frames);
    Path edges = Files.writeString(firmware.resolve("drive.edges"), signal.text());
    Path elf = firmware.resolve("show.elf");
    Output compiled = run(compiler(firmware, elf, proof));
    if (compiled.code != 0) {
      throw new IOException("the firmware does not compile: " + compiled.text);
    }
    List<String> words = new ArrayList<>(List.of(prover(), "--elf", elf.toString()));
    words.addAll(List.of("--table", table.toString(), "--drive", edges.toString()));
    words.addAll(proof.driveOptions(clock, count));
    Output report = run(words.toArray(String[]::new));
    if (report.code > 1) {
      throw new IOException("the prover stopped: " + report.text);
    }
    return Proof.of(report.text);
  }

  private static String[] compiler(Path firmware, Path elf, FirmwareProof proof)
      throws IOException {
    List<String> words = new ArrayList<>(List.of("avr-gcc", "-mmcu=" + proof.controller()));
    words.add("-DF_CPU=" + proof.hertz() + "UL");
    words.addAll(
        Splitter.on(' ')
            .splitToList("-Os -std=c99 -ffunction-sections -fdata-sections -DLAMPWRIGHT_PROBE"));
    words.add("-I" + firmware.resolve("src"));
    words.add(firmware.resolve("main.c").toString());
    try (Stream<Path> sources = Files.list(firmware.resolve("src"))) {
      sources
          .map(Path::toString)
          .filter(name -> name.endsWith(".c") || name.endsWith(".S"))
          .sorted()
          .forEach(words::add);
    }
    words.addAll(List.of("-Wl,--gc-sections", "-o", elf.toString()));
    return words.toArray(String[]::new);
  }

  private static OutputStream file(Path folder, String name) throws IOException {
    Path path = folder.resolve(name);
    Files.createDirectories(path.resolveSibling("."));
    return new BufferedOutputStream(Files.newOutputStream(path));
  }

  private String prover() {
    return folder.resolve("prover").toString();
  }

  private static Output run(String... words) throws IOException, InterruptedException {
    Path errors = Files.createTempFile("lampwright-prove", ".txt");
    try {
      Process process = new ProcessBuilder(words).redirectError(errors.toFile()).start();
      process.getOutputStream().close();
      String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      int code = process.waitFor();
      return new Output(code, text.isEmpty() ? Files.readString(errors) : text);
    } finally {
      Files.delete(errors);
    }
  }

  private static boolean onPath(String tool) {
    String path = System.getenv().getOrDefault("PATH", "");
    return Splitter.on(java.io.File.pathSeparatorChar)
        .splitToStream(path)
        .filter(place -> !place.isEmpty())
        .anyMatch(place -> Files.isExecutable(Path.of(place, tool)));
  }

  /** What a program said and how it ended. */
  private record Output(int code, String text) {}
}
