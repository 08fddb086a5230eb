package lampwright.app.command;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import lampwright.app.live.E131Network;
import lampwright.app.live.E131Plan;
import lampwright.app.live.E131Slice;
import lampwright.app.live.E131Source;
import lampwright.app.live.E131Stream;
import lampwright.app.live.SenderId;
import lampwright.app.workshop.disk.StateFolder;
import lampwright.engine.check.Checks;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** Frames to receivers on a network, as ANSI E1.31. */
final class LiveE131 {
  private static final String MULTICAST = "multicast";

  @Spec(Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--universe",
      paramLabel = "N",
      description = "universe of the first chain, 1 to 63999; the others follow. Default: 1")
  private Optional<Integer> universe = Optional.empty();

  @Option(
      names = "--priority",
      paramLabel = "P",
      description = "priority of the universes, 0 to 200. Default: 100")
  private Optional<Integer> priority = Optional.empty();

  @Option(
      names = "--interface",
      paramLabel = "NAME",
      description = "network interface for multicast, such as eth0. Default: the system's")
  private Optional<String> networkInterface = Optional.empty();

  /**
   * Whether its options fit.
   *
   * @throws ParameterException if they do not
   */
  void check(Optional<String> host) {
    boolean multicast = host.filter(MULTICAST::equals).isPresent();
    refuse(universe.isPresent() && host.isEmpty(), "--universe: needs --e131");
    refuse(priority.isPresent() && host.isEmpty(), "--priority: needs --e131");
    refuse(networkInterface.isPresent() && !multicast, "--interface: needs --e131 multicast");
    range("--universe", universe, 1, E131Plan.MOST_UNIVERSE);
    range("--priority", priority, 0, E131Source.MOST_PRIORITY);
  }

  private void range(String option, Optional<Integer> value, int least, int most) {
    refuse(
        value.filter(v -> v < least || v > most).isPresent(),
        option + ": must be between " + least + " and " + Checks.limit(most));
  }

  private void refuse(boolean wrong, String why) {
    if (wrong) {
      throw new ParameterException(spec.commandLine(), why);
    }
  }

  /** Plays; gives the exit code. */
  int play(String host, Project project, LiveShow.Ready ready, LiveStage stage, Terminal terminal)
      throws IOException, InterruptedException {
    E131Plan plan;
    try {
      plan = E131Plan.of(project.rig(), universe.orElse(1));
    } catch (IllegalArgumentException tooMany) {
      throw new ParameterException(
          spec.commandLine(), "--universe: " + tooMany.getMessage(), tooMany);
    }
    E131Source source =
        E131Source.of(
            SenderId.in(StateFolder.ofUser()),
            project.name(),
            priority.orElse(E131Source.USUAL_PRIORITY));
    plan.slices().forEach(slice -> terminal.out().println(words(slice)));
    terminal.out().flush();
    try (E131Network network =
        host.equals(MULTICAST)
            ? E131Network.multicast(networkInterface)
            : E131Network.unicast(host)) {
      E131Stream stream =
          new E131Stream(plan, source, ready.feed(), network::send, System::nanoTime);
      terminal.err().println(SafeText.text(host) + ": sending");
      terminal.err().flush();
      stage.begin();
      stage.run(
          () -> {
            stream.run();
            return null;
          },
          stream::end);
      terminal
          .out()
          .println(
              stream.sent()
                  + " packets sent"
                  + (stream.failed() == 0
                      ? ""
                      : ", " + stream.failed() + " not taken by the network"));
    }
    return ExitCode.DONE;
  }

  private static String words(E131Slice slice) {
    String part =
        slice.part().isEmpty()
            ? "driver outputs"
            : String.format(
                Locale.ROOT,
                "chain %s, pixels %d to %d",
                slice.part(),
                slice.first(),
                slice.first() + slice.count() - 1);
    return String.format(
        Locale.ROOT,
        "Universe %d: %s, slots 1 to %d, at most %.1f frames/s",
        slice.universe(),
        part,
        slice.slots(),
        slice.mostPerSecond());
  }
}
