package lampwright.app.workshop;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** Projects for the workshop's tests. */
public final class Projects4Tests {
  private Projects4Tests() {}

  /** Two RGBW pixels as lamp {@code roof}, an output as lamp {@code amber}, one second at 50. */
  public static Project small() {
    Chain chain = new Chain("c", BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), 2);
    Rig rig =
        Rig.of(
            List.of(chain),
            List.of(DriverOutput.of("o")),
            List.of(Lamp.ofPixels("roof", new PixelRun("c", 0, 2)), Lamp.ofOutput("amber", "o")));
    return Project.of(
        "small",
        rig,
        Scene.TRACKS.with(
            lampwright.app.workshop.edit.Projects.emptyScene("work", 1000),
            List.of(Track.of(List.of("roof"), Cue.of(0, 1000, new Steady(Look.DEFAULT))))),
        lampwright.app.workshop.edit.Projects.emptyScene("rest", 500));
  }

  private static final Path FOLDER = Path.of("src/test/resources/lampwright/app/workshop");

  /** What {@link #reacting} reads. */
  public static final Path REACTING = FOLDER.resolve("reacting.lampwright.json");

  /** A recorded drive of it. */
  public static final Path DRIVE = FOLDER.resolve("reacting.drive.csv");

  /** A sample of the repository. */
  public static Project sample(String name) {
    return read(Path.of("..", "samples", name + ".lampwright.json"));
  }

  /** A recovery tractor with a few situations, whatever the sample has. */
  public static Project reacting() {
    return read(REACTING);
  }

  private static Project read(Path file) {
    try {
      Optional<Project> read = ProjectReader.read(file).project();
      return read.orElseThrow(() -> new AssertionError(file + " has errors"));
    } catch (IOException unreadable) {
      throw new AssertionError(unreadable);
    }
  }
}
