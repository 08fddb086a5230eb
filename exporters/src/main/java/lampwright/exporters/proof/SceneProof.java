package lampwright.exporters.proof;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.ShowClock;
import lampwright.engine.time.Ratio;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.DriveSignal;
import lampwright.exporters.firmware.Uf2Exporter;
import lampwright.exporters.firmware.Uf2ShowExporter;
import lampwright.exporters.target.Rp2040Board;
import lampwright.exporters.target.Target;

/** Exports a scene as a UF2 file, and proves that very file. */
public final class SceneProof {
  private SceneProof() {}

  /**
   * Proves a scene of a rig whose controller takes UF2 files.
   *
   * @param waveform takes the first frames of the chains' signals as a value change dump, if wanted
   * @param waveformFrames how many
   */
  public static ProofReport run(ExportJob job, Optional<Writer> waveform, int waveformFrames)
      throws IOException, CancelledException {
    ByteArrayOutputStream uf2 = new ByteArrayOutputStream();
    new Uf2Exporter().export(job, name -> uf2, Progress.SILENT);
    Rp2040Proof proof =
        new Rp2040Proof(
            job.project().rig(),
            gpios(job.project().rig()),
            frames(job.table()),
            Ratio.of(job.scene().framesPerSecond()),
            job.scene().loop());
    waveform.ifPresent(out -> proof.waveform(out, waveformFrames));
    try {
      return proof.run(uf2.toByteArray());
    } catch (Uf2Exception wrong) {
      throw new IOException("the exported file is wrong: " + wrong.getMessage(), wrong);
    }
  }

  /**
   * Exports the situations of a project as a UF2 file, and proves that very file by a drive on the
   * pins of its inputs.
   *
   * @param job all that the situations need
   * @param frames what must be sent, one behind another
   */
  public static ProofReport ofDrive(
      ProjectJob job, ShowClock clock, DriveSignal signal, byte[] frames)
      throws IOException, CancelledException {
    ByteArrayOutputStream uf2 = new ByteArrayOutputStream();
    new Uf2ShowExporter().export(job, name -> uf2, Progress.SILENT);
    try {
      return ofDrive(job.project().rig(), clock, signal, frames, uf2.toByteArray());
    } catch (Uf2Exception wrong) {
      throw new IOException("the exported file is wrong: " + wrong.getMessage(), wrong);
    }
  }

  /** The same of a file that is there. */
  static ProofReport ofDrive(
      Rig rig, ShowClock clock, DriveSignal signal, byte[] frames, byte[] uf2) throws Uf2Exception {
    Ratio rate = Ratio.of(clock.framesPerSecond());
    return new Rp2040Proof(rig, gpios(rig), frames, rate, false).drive(signal.edges()).run(uf2);
  }

  private static List<Integer> gpios(Rig rig) {
    Rp2040Board board = Target.of(rig).rp2040Board(rig).orElseThrow();
    List<Integer> gpios = new ArrayList<>();
    board.chains().forEach(line -> gpios.add(line.pin()));
    gpios.addAll(board.outputPins());
    return gpios;
  }

  private static byte[] frames(FrameTable table) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    byte[] frame = new byte[table.layout().bytes()];
    var cursor = table.cursor();
    while (cursor.hasNext()) {
      cursor.next(frame);
      all.write(frame, 0, frame.length);
    }
    return all.toByteArray();
  }
}
