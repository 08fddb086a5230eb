package lampwright.app.command;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.ShowClock;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.DriveSignal;
import lampwright.exporters.firmware.Uf2Exporter;
import lampwright.exporters.proof.SceneProof;

/** Runs UF2 files on the model of the RP2040 that comes with the program. */
final class Uf2Prover implements Prover {
  private final Path folder;

  Uf2Prover(Path folder) {
    this.folder = folder;
  }

  @Override
  public void prepare() {
    // The model is there.
  }

  @Override
  public void requireExportable(Project project, List<Scene> scenes) {
    Uf2Exporter exporter = new Uf2Exporter();
    for (Scene scene : scenes) {
      var refusals = exporter.facts(ExportJob.of(project, scene, ExportOptions.DEFAULT)).refusals();
      ExportRefusedException.throwIfAny(exporter.key(), Optional.of(scene.id()), refusals);
    }
  }

  @Override
  public Proof prove(Project project, Scene scene) throws IOException, CancelledException {
    ExportJob job = ExportJob.of(project, scene, ExportOptions.DEFAULT);
    if (project.rig().chains().isEmpty()) {
      return Proof.of(SceneProof.run(job, Optional.empty(), 0));
    }
    try (Writer out = Files.newBufferedWriter(waveform(scene))) {
      return Proof.of(SceneProof.run(job, Optional.of(out), Prover.framesShown(job)));
    }
  }

  @Override
  public Proof prove(Project project, ShowClock clock, DriveSignal signal, byte[] frames, int count)
      throws IOException, CancelledException {
    ProjectJob job = ProjectJob.of(project, project.scenes());
    return Proof.of(SceneProof.ofDrive(job, clock, signal, frames));
  }

  @Override
  public Path waveform(Scene scene) {
    return folder.resolve(scene.id() + ".vcd");
  }
}
