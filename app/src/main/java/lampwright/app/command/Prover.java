package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.ShowClock;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.firmware.DriveSignal;

/** What proves the firmware of a controller, in a folder of its own. */
interface Prover {
  /** Most frames in a waveform; a long scene's file would else be too large to look at. */
  int MAX_FRAMES_SHOWN = 1000;

  /** Makes what all scenes need. */
  void prepare() throws IOException, InterruptedException;

  /** Makes sure that the firmware of every scene can be exported, before any is proved. */
  void requireExportable(Project project, List<Scene> scenes);

  /** Exports and runs one scene. */
  Proof prove(Project project, Scene scene)
      throws IOException, CancelledException, InterruptedException;

  /**
   * Exports the situations and plays a drive to them, with its readings on the pins.
   *
   * @param signal the drive on the pins
   * @param frames what must come of it
   * @param count how many these are
   */
  Proof prove(Project project, ShowClock clock, DriveSignal signal, byte[] frames, int count)
      throws IOException, CancelledException, InterruptedException;

  /**
   * The signals on the chains' pins in a scene that was proved: a value change dump (IEEE 1364).
   */
  Path waveform(Scene scene);

  /** Frames of which a waveform tells: the first loop and its seam, as long as that is not long. */
  static int framesShown(ExportJob job) {
    int frames = job.table().frameCount();
    return Math.min(MAX_FRAMES_SHOWN, job.scene().loop() ? frames + 1 : frames);
  }
}
