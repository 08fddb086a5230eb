package lampwright.app.live;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import lampwright.engine.json.ProjectReader;
import lampwright.exporters.live.LiveProtocol;

/**
 * A controller with the firmware of a project, on standard input and output: behind a
 * pseudo-terminal it is what the picture of the bench link in the documents shows.
 */
public final class StandInController {
  private StandInController() {}

  /** Takes a project file; ends with its input. */
  public static void main(String[] arguments) throws IOException {
    LinkIdentity rig =
        LinkIdentity.of(ProjectReader.read(Path.of(arguments[0])).project().orElseThrow().rig());
    SimulatedController controller =
        new SimulatedController(rig.frameBytes(), rig.layout(), LiveProtocol.VERSION);
    try (FileInputStream in = new FileInputStream(FileDescriptor.in);
        FileOutputStream out = new FileOutputStream(FileDescriptor.out)) {
      for (int next = in.read(); next >= 0; next = in.read()) {
        Optional<byte[]> answer = controller.take((byte) next);
        if (answer.isPresent()) {
          out.write(answer.get());
        }
      }
    }
  }
}
