package lampwright.exporters.firmware;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.DriveReader;
import lampwright.engine.situation.Show;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;

/**
 * A project with situations, a drive, and what the engine makes of them.
 *
 * @param frames one behind another
 */
@SuppressWarnings("ArrayRecordComponent")
public record DrivenShow(ProjectJob job, Show show, Drive drive, byte[] frames) {
  /** The frames up to the drive's last row. */
  public static DrivenShow of(Project project, Drive drive) {
    ProjectJob job = ProjectJob.of(project, project.scenes());
    Show show = job.show().orElseThrow();
    ShowFrames player = new ShowFrames(show);
    Drive.Player readings = new Drive.Player(drive, show.clock());
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    byte[] frame = new byte[player.frameBytes()];
    for (int i = drive.frames(show.clock()).orElseThrow(); i > 0; i--) {
      readings.feed(player.machine());
      player.next(frame);
      all.writeBytes(frame);
    }
    return new DrivenShow(job, show, drive, all.toByteArray());
  }

  /** A project in a text, on an RP2040 whatever it is for, with the AVR's pins by other names. */
  public static Project onRp2040(String json, Path folder) {
    String text = Pattern.compile("\"controller\": \"[a-z0-9]+\",").matcher(json).replaceAll("");
    text = text.replaceFirst("\"rig\": \\{", "\"rig\": {\"controller\": \"rp2040\",");
    text = Pattern.compile("\"pin\": \"PC(\\d)\"").matcher(text).replaceAll("\"pin\": \"GP2$1\"");
    text =
        Pattern.compile("\"pin\": \"P[BD](\\d)\"").matcher(text).replaceAll("\"pin\": \"GP1$1\"");
    try {
      Path moved = Files.writeString(folder.resolve("moved.lampwright.json"), text);
      return ProjectReader.read(moved).project().orElseThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * One channel and its threshold, one switch, and an output beside a chain, on an RP2040.
   *
   * @param inputs more of them, each after a comma
   */
  public static Project plain(String inputs, String rate, Path folder) {
    return onRp2040(
        """
        {"lampwright": 1, "rig": {"chains": [{"id": "strip", "pixelType": "ws2812b", "pixels": 3}],
         "outputs": [{"id": "o", "pin": "GP0"}],
         "lamps": [{"id": "a", "output": "o"},
                   {"id": "b", "pixels": [{"chain": "strip", "from": 0, "count": 3}]}],
         "inputs": [{"id": "c", "kind": "servo-pulse", "pin": "GP7"},
                    {"id": "s", "kind": "switch", "pin": "GP9"}%s]},
         "scenes": [{"id": "on", "lengthMs": 2000, "framesPerSecond": %s, "tracks": [
          {"lamps": ["a"], "cues": [{"lengthMs": 2000, "pattern": {"kind": "steady"}}]}]},
          {"id": "fade", "lengthMs": 2000, "framesPerSecond": %s, "tracks": [
          {"lamps": ["b"], "cues": [{"lengthMs": 2000, "pattern":
           {"kind": "fade", "fromLevel": 0.2, "toLevel": 0.9}}]}]}],
         "situations": [
          {"id": "above", "priority": 2, "scene": "on",
           "all": [{"input": "c", "aboveUs": 1500, "hysteresisUs": 0}]},
          {"id": "lost", "priority": 3, "scene": "fade", "all": [{"input": "c", "lost": true}]},
          {"id": "pressed", "priority": 1, "scene": "fade", "start": "shared",
           "all": [{"input": "s", "is": "on"}]}]}
        """
            .formatted(inputs, rate, rate),
        folder);
  }

  /** A recorded drive of a project. */
  public static Drive recorded(Project project, byte[] csv) {
    return DriveReader.read(csv, project.rig().inputs()).drive().orElseThrow();
  }

  /** The drive on the pins. */
  public DriveSignal signal() {
    DriveSignal signal = DriveSignal.of(job.project().rig(), drive, show.clock());
    if (!signal.problems().isEmpty()) {
      throw new IllegalArgumentException("rows that no pin can have: " + signal.problems());
    }
    return signal;
  }

  /** The first rows alone. */
  public DrivenShow upTo(long ms) {
    List<Drive.Row> rows = drive.rows().stream().filter(row -> row.ms().longValue() < ms).toList();
    return of(job.project(), new Drive(rows));
  }

  /** The exported file. */
  public byte[] uf2() throws IOException, CancelledException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new Uf2ShowExporter().export(job, name -> out, Progress.SILENT);
    return out.toByteArray();
  }
}
