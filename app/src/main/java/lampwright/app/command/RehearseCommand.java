package lampwright.app.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import lampwright.engine.check.Checks;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Project;
import lampwright.engine.json.ReadResult;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.situation.Change;
import lampwright.engine.situation.Drive;
import lampwright.engine.situation.Show;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Plays the situations of a project to a recorded drive. */
@Command(
    name = "rehearse",
    mixinStandardHelpOptions = true,
    description = {
      "Plays the situations of a project to a recorded drive and writes the frames, as the bin export"
          + " does: frame after frame, no header.",
      "The drive is CSV with the first line ms,input,value: for a servo pulse the time at which it ends"
          + " and its width in us, for a switch the time and the level of its pin, 0 or 1."
          + " docs/situations.md describes both."
    },
    footer = {
      "",
      "Example:",
      "  lampwright rehearse samples/recovery-tractor.lampwright.json \\",
      "    --drive samples/recovery-tractor.drive.csv --to drive.bin"
    })
final class RehearseCommand implements Callable<Integer> {
  /** More than a day at 1,000 frames/s. */
  private static final int MAX_FRAMES = 100_000_000;

  private static final int FRAMES_PER_REPORT = 4096;

  private final Terminal terminal;

  @Mixin private ProjectFile file;
  @Spec private CommandSpec spec;

  @Option(
      names = "--drive",
      paramLabel = "FILE",
      required = true,
      description = "the recorded drive (*.csv)")
  private Path driveFile;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      required = true,
      description = "output file; its folder is created if missing")
  private Path output;

  @Option(
      names = "--frames",
      paramLabel = "N",
      description = "number of frames. Default: to the time of the last row")
  private Optional<Integer> wanted = Optional.empty();

  @Option(
      names = "--log",
      description = "list when each situation begins and ends, and which conditions decided")
  private boolean log;

  RehearseCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    if (wanted.isPresent() && (wanted.get() < 1 || wanted.get() > MAX_FRAMES)) {
      throw new ParameterException(
          spec.commandLine(),
          "--frames: " + wanted.get() + ": must be between 1 and " + Checks.limit(MAX_FRAMES));
    }
    ReadResult result = file.result(terminal);
    if (result.project().isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Project project = result.project().get();
    Optional<Show> show = ShowSource.of(file, result, terminal);
    if (show.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Optional<Drive> drive = DriveFile.read(driveFile, project.rig(), terminal);
    if (drive.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    OptionalInt toTheEnd = drive.get().frames(show.get().clock());
    if (wanted.isEmpty() && toTheEnd.isEmpty()) {
      return refuse(
          ProjectFile.shown(driveFile) + ": the drive has no rows: set the length with --frames");
    }
    int frames = wanted.orElseGet(toTheEnd::getAsInt);
    WholeFile.write(output, out -> play(show.get(), drive.get(), frames, out));
    return ExitCode.DONE;
  }

  private int refuse(String message) {
    terminal.refuse(message);
    return ExitCode.PROJECT_HAS_ERRORS;
  }

  private void play(Show show, Drive drive, int frames, OutputStream out) throws IOException {
    ShowFrames player = new ShowFrames(show);
    Drive.Player readings = new Drive.Player(drive, show.clock());
    byte[] frame = new byte[player.frameBytes()];
    try {
      for (int i = 0; i < frames; i++) {
        readings.feed(player.machine());
        List<Change> changes = player.next(frame);
        out.write(frame);
        if (log) {
          changes.forEach(change -> terminal.out().println(ChangeText.line(change, show.clock())));
        }
        if (i % FRAMES_PER_REPORT == 0) {
          terminal.progress("rehearsing", i, frames);
        }
      }
    } finally {
      terminal.endProgress();
    }
  }
}
