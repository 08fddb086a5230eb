package lampwright.app.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ProjectExporter;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.DriveSignal;
import lampwright.exporters.firmware.FirmwareExporter;
import lampwright.exporters.firmware.FirmwareProof;
import lampwright.exporters.firmware.Uf2ShowExporter;

/** Proves the situations of a project with a recorded drive on the pins. */
final class DriveProof {
  private final Terminal terminal;
  private final Prover bench;

  DriveProof(Terminal terminal, Prover bench) {
    this.terminal = terminal;
    this.bench = bench;
  }

  /** The exit code. */
  int prove(Project project, Path driveFile)
      throws IOException, CancelledException, InterruptedException {
    FirmwareProof proof = new FirmwareProof(project.rig());
    ProjectJob job = ProjectJob.of(project, project.scenes());
    ProjectExporter exporter = proof.byUf2() ? new Uf2ShowExporter() : new FirmwareExporter();
    ExportRefusedException.throwIfAny(
        exporter.key(), Optional.empty(), exporter.facts(job).refusals());
    Optional<Show> show = job.show();
    if (show.isEmpty()) {
      return refuse("no situation has a scene, so there is nothing to play");
    }
    Optional<Drive> drive = DriveFile.read(driveFile, project.rig(), terminal);
    if (drive.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    if (drive.get().rows().isEmpty()) {
      return refuse(ProjectFile.shown(driveFile) + ": the drive has no rows");
    }
    DriveSignal signal = DriveSignal.of(project.rig(), drive.get(), show.get().clock());
    if (!signal.problems().isEmpty()) {
      return refuse(
          ProjectFile.shown(driveFile)
              + ": rows "
              + signal.problems().stream().limit(10).map(String::valueOf).toList()
              + ": pulses on one pin must not overlap");
    }
    bench.prepare();
    int frames = drive.get().frames(show.get().clock()).orElseThrow();
    byte[] wanted = rehearse(show.get(), drive.get(), frames);
    Proof result = bench.prove(project, show.get().clock(), signal, wanted, frames);
    report(result, proof.servoErrorUs());
    return result.passed() ? ExitCode.DONE : ExitCode.PROJECT_HAS_ERRORS;
  }

  private int refuse(String message) {
    terminal.refuse(message);
    return ExitCode.PROJECT_HAS_ERRORS;
  }

  private static byte[] rehearse(Show show, Drive drive, int frames) {
    ShowFrames player = new ShowFrames(show);
    Drive.Player readings = new Drive.Player(drive, show.clock());
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    byte[] frame = new byte[player.frameBytes()];
    for (int i = 0; i < frames; i++) {
      readings.feed(player.machine());
      player.next(frame);
      all.writeBytes(frame);
    }
    return all.toByteArray();
  }

  private void report(Proof proof, double errorUs) {
    for (List<String> line :
        List.of(
            List.of("result", proof.passed() ? "proved" : "FAILED"),
            List.of("frames", proof.figure("/framesCompared")),
            List.of("wrong", proof.figure("/framesWrong")),
            List.of("bits", proof.figure("/bitsCompared")),
            List.of("outside", proof.figure("/bitsOutsideLimits")),
            List.of("mean, cycles", proof.figure("/decode/averageCycles")),
            List.of("max, cycles", proof.figure("/decode/worstCycles")),
            List.of("of frame", proof.figure("/decode/worstShareOfPeriod")),
            List.of("routine, us", proof.figure("/interrupts/longestRoutineUs")),
            List.of("flash", proof.figure("/memory/flash")),
            List.of("RAM", proof.figure("/memory/ram")),
            List.of("stack", proof.figure("/memory/deepestStack")))) {
      if (!line.get(1).equals(Proof.MISSING)) {
        terminal.out().printf(Locale.ROOT, "%-12s %s%n", line.get(0), line.get(1));
      }
    }
    terminal
        .out()
        .printf(
            Locale.ROOT,
            "Widths are measured to %.1f us: a reading nearer than that to a threshold can fall on"
                + " either side.%n",
            errorUs);
    proof.faults().forEach(fault -> terminal.err().println("drive: " + fault));
  }
}
