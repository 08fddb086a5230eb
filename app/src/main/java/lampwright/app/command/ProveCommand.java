package lampwright.app.command;

import com.google.common.io.MoreFiles;
import com.google.common.io.RecursiveDeleteOption;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.engine.disk.FileSet;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.firmware.FirmwareProof;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Proves firmware on the simulator. */
@Command(
    name = "prove",
    mixinStandardHelpOptions = true,
    description = {
      "Runs the firmware of each scene on a simulated controller and checks its pins: the value and"
          + " timing of every bit, and the duty cycle of every driver output, over two full loops"
          + " including the wrap-around.",
      "RP2040: runs the exported UF2 file; nothing needs to be installed.",
      "AVR: compiles with avr-gcc; requires the Debian packages gcc, gcc-avr, avr-libc, simavr,"
          + " libsimavr-dev and libelf-dev."
    },
    footer = {"", "Example:", "  lampwright prove samples/recovery-tractor.lampwright.json"})
final class ProveCommand implements Callable<Integer> {
  private static final String ROW = "%-16s %-7s %8s %6s %10s %7s %9s %9s %8s %7s %7s %6s%n";

  private final Terminal terminal;

  @Mixin private ProjectFile file;
  @Mixin private SceneChoice choice;
  @Spec private CommandSpec spec;

  @Option(
      names = "--waveform",
      paramLabel = "DIR",
      description = {
        "folder for the signals on the data pins, one .vcd file per scene, for logic analyser"
            + " software: the first loop and the wrap-around, at most 1,000 frames. Pauses between"
            + " frames are cut to 0.4 ms"
      })
  private @Nullable Path waveforms;

  @Option(
      names = "--drive",
      paramLabel = "FILE",
      description = {
        "a recorded drive (*.csv), as for rehearse: proves the situations instead of the scenes. Its"
            + " readings are put on the pins of the inputs, and all frames up to its last row are"
            + " compared with those of rehearse"
      })
  private @Nullable Path driveFile;

  ProveCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, CancelledException, InterruptedException {
    Optional<Project> read = file.read(terminal);
    if (read.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Project project = read.get();
    List<Scene> scenes = choice.of(project);
    if (!new FirmwareProof(project.rig()).possible()) {
      terminal
          .err()
          .println(
              "lampwright: nothing to prove: on this controller your own code drives the pins");
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    if (waveforms != null && project.rig().chains().isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "--waveform: the rig has no chains, so there are no signals to write");
    }
    if (driveFile != null && waveforms != null) {
      throw new ParameterException(spec.commandLine(), "--waveform: not with --drive");
    }
    Path folder = Files.createTempDirectory("lampwright-prove");
    try {
      boolean byUf2 = new FirmwareProof(project.rig()).byUf2();
      Prover bench = byUf2 ? new Uf2Prover(folder) : new ProofBench(folder);
      return driveFile != null
          ? new DriveProof(terminal, bench).prove(project, driveFile)
          : prove(project, scenes, bench);
    } finally {
      MoreFiles.deleteRecursively(folder, RecursiveDeleteOption.ALLOW_INSECURE);
    }
  }

  private int prove(Project project, List<Scene> scenes, Prover bench)
      throws IOException, CancelledException, InterruptedException {
    bench.prepare();
    bench.requireExportable(project, scenes);
    if (waveforms != null) {
      requireWritable(waveforms, scenes);
    }
    terminal
        .out()
        .printf(
            Locale.ROOT,
            ROW,
            "scene",
            "",
            "frames",
            "wrong",
            "bits",
            "outside",
            "mean",
            "max",
            "of frame",
            "flash",
            "RAM",
            "stack");
    terminal
        .out()
        .printf(
            Locale.ROOT,
            ROW,
            "",
            "",
            "",
            "frames",
            "",
            "limits",
            "cycles",
            "cycles",
            "time",
            "bytes",
            "bytes",
            "bytes");
    boolean all = true;
    for (Scene scene : scenes) {
      Proof proof = bench.prove(project, scene);
      all &= proof.passed();
      row(scene, proof);
    }
    if (waveforms != null) {
      keepWaveforms(waveforms, scenes, bench);
    }
    terminal
        .out()
        .println(
            "outside: bits outside the limits of the pixel type; mean, max: CPU cycles to decode a"
                + " frame (RP2040: all cycles awake); of frame: max in per cent of the frame time; flash, RAM: bytes; stack:"
                + " greatest depth in bytes, which the RAM does not include.");
    return all ? ExitCode.DONE : ExitCode.PROJECT_HAS_ERRORS;
  }

  /** Fails before a long proof rather than after it. */
  private static void requireWritable(Path folder, List<Scene> scenes) throws IOException {
    try (FileSet files = FileSet.in(folder)) {
      for (Scene scene : scenes) {
        files.open(waveform(scene)).close();
      }
    }
  }

  private static String waveform(Scene scene) {
    return scene.id() + ".vcd";
  }

  private static void keepWaveforms(Path folder, List<Scene> scenes, Prover bench)
      throws IOException {
    try (FileSet files = FileSet.in(folder)) {
      for (Scene scene : scenes) {
        try (OutputStream out = files.open(waveform(scene))) {
          Files.copy(bench.waveform(scene), out);
        }
      }
      files.commit();
    }
  }

  private void row(Scene scene, Proof proof) {
    String share = proof.figure("/decode/worstShareOfPeriod");
    terminal
        .out()
        .printf(
            Locale.ROOT,
            ROW,
            scene.id(),
            proof.passed() ? "proved" : "FAILED",
            proof.figure("/framesCompared"),
            proof.figure("/framesWrong"),
            proof.figure("/bitsCompared"),
            proof.figure("/bitsOutsideLimits"),
            proof.figure("/decode/averageCycles"),
            proof.figure("/decode/worstCycles"),
            percent(share),
            proof.figure("/memory/flash"),
            proof.figure("/memory/ram"),
            proof.figure("/memory/deepestStack"));
    proof.faults().forEach(fault -> terminal.err().println(scene.id() + ": " + fault));
  }

  private static String percent(String share) {
    return share.equals(Proof.MISSING)
        ? share
        : String.format(Locale.ROOT, "%.2f %%", 100 * Double.parseDouble(share));
  }
}
