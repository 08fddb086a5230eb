package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.app.live.BenchBrightness;
import lampwright.engine.document.Project;
import lampwright.engine.json.ReadResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plays frames on real lamps. */
@Command(
    name = "live",
    mixinStandardHelpOptions = true,
    description = {
      "Plays a scene on the real lamps: over a serial port to a controller with the firmware of this"
          + " project (the bench link), or over the network as ANSI E1.31.",
      "It plays until Ctrl+C or the time of --seconds; a scene that plays once stays on its last"
          + " frame. Lamps are dimmed to 25 %% unless --brightness asks for more.",
      "docs/live.md describes both."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright live --list",
      "  lampwright live samples/recovery-tractor.lampwright.json --port ttyUSB0 --scene road",
      "  lampwright live samples/harbour-dusk.lampwright.json --e131 192.168.1.40",
      "  lampwright live samples/harbour-dusk.lampwright.json --e131 multicast --universe 10"
    })
final class LiveCommand implements Callable<Integer> {
  private static final double MOST_SECONDS = 86_400 * 366.0;

  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "PROJECT",
      arity = "0..1",
      description = "the project file (*.lampwright.json)")
  private Optional<Path> file = Optional.empty();

  @Option(names = "--list", description = "list the serial ports")
  private boolean list;

  @Option(
      names = "--port",
      paramLabel = "NAME",
      description = "serial port of the controller, such as ttyUSB0 or COM3")
  private Optional<String> port = Optional.empty();

  @Mixin private LiveSerial serial;

  @Option(
      names = "--e131",
      paramLabel = "HOST",
      description = "name or address of an E1.31 receiver, or the word multicast")
  private Optional<String> host = Optional.empty();

  @Mixin private LiveE131 e131;

  @Mixin private LiveShow show;

  @Option(
      names = "--brightness",
      paramLabel = "PERCENT",
      description = "bench brightness in percent of the project's, 1 to 100. Default: 25")
  private Optional<Integer> brightness = Optional.empty();

  @Option(
      names = "--seconds",
      paramLabel = "S",
      description = "ends after this time, counted from the first frame. Default: until Ctrl+C")
  private Optional<Double> seconds = Optional.empty();

  LiveCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, InterruptedException {
    if (list) {
      refuse(port.isPresent() || host.isPresent(), "--list: not with --port or --e131");
      return serial.list(terminal);
    }
    refuse(file.isEmpty(), "Missing required parameter: 'PROJECT'");
    refuse(port.isPresent() == host.isPresent(), "needs one of --port NAME and --e131 HOST");
    serial.check(port.isPresent());
    e131.check(host);
    refuse(
        brightness
            .filter(b -> b < BenchBrightness.LEAST || b > BenchBrightness.GREATEST)
            .isPresent(),
        "--brightness: must be between 1 and 100");
    refuse(
        seconds.filter(s -> !(s > 0 && s <= MOST_SECONDS)).isPresent(),
        "--seconds: must be more than 0, and at most a year");
    ProjectFile named = new ProjectFile(file.orElseThrow());
    ReadResult read = named.result(terminal);
    Optional<Project> project = read.project();
    if (project.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    BenchBrightness wanted = brightness.map(BenchBrightness::new).orElse(BenchBrightness.USUAL);
    Optional<LiveShow.Ready> ready = show.ready(named, read, wanted, terminal);
    if (ready.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    LiveStage stage = new LiveStage(seconds);
    return port.isPresent()
        ? serial.play(port.get(), project.get(), ready.get(), stage, terminal)
        : e131.play(host.orElseThrow(), project.get(), ready.get(), stage, terminal);
  }

  private void refuse(boolean wrong, String why) {
    if (wrong) {
      throw new ParameterException(spec.commandLine(), why);
    }
  }
}
