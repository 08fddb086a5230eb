package lampwright.app.command;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.engine.check.Checks;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.json.ReadResult;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Show;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Explains the bytes of a pixel. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    description = {
      "Lists why a lamp shows what it shows at one instant, step by step with the numbers of the"
          + " renderer: situation, cues, pattern, curve, colour, blend, warm-up, caps and byte.",
      "Frames and pixels are counted from 0. With a recorded drive, the frame is one of the show, and"
          + " the situation that has the lamp is explained too."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright explain samples/recovery-tractor.lampwright.json --frame 37 --lamp beacon-left",
      "  lampwright explain samples/recovery-tractor.lampwright.json --at 2.5 \\",
      "    --lamp tail-left --drive samples/recovery-tractor.drive.csv"
    })
final class ExplainCommand implements Callable<Integer> {
  /** Of a drive, since the show is played up to the frame: as many as a scene has. */
  private static final int MAX_FRAMES = Scene.MAX_FRAMES;

  /** Digits of a time; what is beyond them is less than any frame lasts. */
  private static final MathContext ENOUGH = new MathContext(60, RoundingMode.DOWN);

  /** A time in which no frame ends, s. */
  private static final BigDecimal LEAST = new BigDecimal("1e-9");

  /** One of them is needed. */
  static final class Instant {
    @Option(names = "--frame", paramLabel = "N", description = "the frame, 0 the first")
    private Optional<Integer> frame = Optional.empty();

    @Option(
        names = "--at",
        paramLabel = "SECONDS",
        description = "the time; the frame that is shown then")
    private Optional<BigDecimal> seconds = Optional.empty();
  }

  private final Terminal terminal;

  @Mixin private ProjectFile file;
  @Spec private CommandSpec spec;

  @ArgGroup(multiplicity = "1")
  private Instant instant;

  @Option(names = "--lamp", paramLabel = "ID", required = true, description = "the lamp")
  private String lampId;

  @Option(
      names = "--pixel",
      paramLabel = "N",
      description = "the pixel of the lamp, 0 the first. Default: 0")
  private int pixel;

  @Option(
      names = "--scene",
      paramLabel = "ID",
      description = "the scene. Default: the first of the project")
  private Optional<String> wanted = Optional.empty();

  @Option(
      names = "--drive",
      paramLabel = "FILE",
      description = "a recorded drive (*.csv): explains the lamp as situations show it")
  private Optional<Path> driveFile = Optional.empty();

  @Option(names = "--json", description = "print the explanation as JSON")
  private boolean json;

  ExplainCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    if (wanted.isPresent() && driveFile.isPresent()) {
      throw wrong("--scene: cannot be combined with --drive, whose situations select the scene");
    }
    ReadResult result = file.result(terminal);
    if (result.project().isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Project project = result.project().get();
    Lamp lamp = lamp(project);
    Optional<Explanation> why =
        driveFile.isPresent()
            ? ofDrive(result, project, lamp, driveFile.get())
            : ofScene(project, lamp);
    if (why.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    if (json) {
      ExplainJson.write(why.get(), project, terminal.out());
    } else {
      ExplainText.print(why.get(), project.rig(), terminal.out());
    }
    return ExitCode.DONE;
  }

  private Lamp lamp(Project project) {
    List<String> known = project.rig().lamps().stream().map(Lamp::id).toList();
    Lamp lamp =
        project
            .rig()
            .lamp(lampId)
            .orElseThrow(
                () ->
                    wrong(
                        known.isEmpty()
                            ? "--lamp: the project has no lamps"
                            : UnknownWord.of("--lamp", lampId, known)));
    int pixels = lamp.fitting().lights();
    if (pixel < 0 || pixel >= pixels) {
      throw wrong("--pixel: " + pixel + ": must be " + span(pixels));
    }
    return lamp;
  }

  private Optional<Explanation> ofScene(Project project, Lamp lamp) {
    Optional<Scene> scene = SceneChoice.one(wanted, file, project, spec, terminal);
    if (scene.isEmpty()) {
      return Optional.empty();
    }
    int frame = frame(scene.get().framesPerSecond(), scene.get().frameCount());
    return Optional.of(Explanation.ofScene(project, scene.get(), frame, lamp, pixel));
  }

  private Optional<Explanation> ofDrive(
      ReadResult result, Project project, Lamp lamp, Path recorded) throws IOException {
    Optional<Show> show = ShowSource.of(file, result, terminal);
    if (show.isEmpty()) {
      return Optional.empty();
    }
    int frame = frame(show.get().clock().framesPerSecond(), MAX_FRAMES);
    return DriveFile.read(recorded, project.rig(), terminal)
        .map(drive -> Explanation.ofDrive(project, show.get(), drive, frame, lamp, pixel));
  }

  /** The frame that is asked for; at a time, the last that began by then. */
  private int frame(BigDecimal rate, int count) {
    if (instant.frame.isPresent()) {
      int frame = instant.frame.get();
      if (frame < 0 || frame >= count) {
        throw wrong("--frame: " + frame + ": must be " + span(count));
      }
      return frame;
    }
    BigDecimal seconds = instant.seconds.orElseThrow();
    BigDecimal end = BigDecimal.valueOf(count).divide(rate, MathContext.DECIMAL64);
    // Compared before anything is worked out: an exponent may be huge.
    if (seconds.signum() < 0 || seconds.compareTo(end) >= 0) {
      throw wrong(
          "--at: "
              + SafeText.text(seconds.toString())
              + ": must be at least 0 and below "
              + end.stripTrailingZeros().toPlainString()
              + " s");
    }
    if (seconds.compareTo(LEAST) < 0) {
      return 0;
    }
    BigDecimal frame = seconds.round(ENOUGH).multiply(rate).setScale(0, RoundingMode.FLOOR);
    return Math.min(frame.intValueExact(), count - 1);
  }

  private static String span(int count) {
    return count == 1 ? "0" : "between 0 and " + Checks.limit(count - 1);
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
