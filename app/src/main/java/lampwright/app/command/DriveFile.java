package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import lampwright.engine.disk.RegularFile;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.DriveReader;

/** Reads recorded drives for commands. */
final class DriveFile {
  private DriveFile() {}

  /** The drive; none if it has problems, which the terminal lists. */
  static Optional<Drive> read(Path path, Rig rig, Terminal terminal) throws IOException {
    byte[] bytes = RegularFile.start(path, DriveReader.MAX_BYTES + 1);
    DriveReader.Result read = DriveReader.read(bytes, rig.inputs());
    String name = ProjectFile.shown(path);
    read.problems().forEach(p -> terminal.err().println(name + ": error: " + p.text()));
    return read.drive();
  }
}
