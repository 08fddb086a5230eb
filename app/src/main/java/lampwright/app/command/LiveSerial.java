package lampwright.app.command;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import lampwright.app.live.Baud;
import lampwright.app.live.LinkException;
import lampwright.app.live.LinkIdentity;
import lampwright.app.live.LinkRate;
import lampwright.app.live.LinkState;
import lampwright.app.live.LinkTrouble;
import lampwright.app.live.LinkWords;
import lampwright.app.live.LiveLink;
import lampwright.app.live.PortInfo;
import lampwright.app.live.SerialPorts;
import lampwright.engine.document.Project;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** Frames to a controller on a serial port. */
final class LiveSerial {
  @Spec(Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--baud",
      paramLabel = "RATE",
      description =
          "baud rate of the port, 500000 or 115200, as the firmware was built. Default: 500000")
  private Optional<Integer> rate = Optional.empty();

  /**
   * Whether its options fit.
   *
   * @param serial whether there is a port
   * @throws ParameterException if they do not
   */
  void check(boolean serial) {
    if (rate.isPresent() && !serial) {
      throw new ParameterException(spec.commandLine(), "--baud: needs --port");
    }
    baud();
  }

  private Baud baud() {
    return rate.isEmpty()
        ? Baud.FAST
        : Baud.of(rate.get())
            .orElseThrow(
                () ->
                    new ParameterException(
                        spec.commandLine(),
                        "--baud: "
                            + rate.get()
                            + ": must be "
                            + Baud.FAST.rate()
                            + " or "
                            + Baud.SLOW.rate()));
  }

  /** Lists the ports; gives the exit code. */
  int list(Terminal terminal) throws IOException {
    List<PortInfo> ports;
    try {
      ports = new SerialPorts().ports();
    } catch (LinkException unusable) {
      throw new IOException(unusable.getMessage(), unusable);
    }
    ports.forEach(one -> terminal.out().println(LinkWords.of(one)));
    if (ports.isEmpty()) {
      terminal.err().println(LinkWords.noPorts());
    }
    return ExitCode.DONE;
  }

  /** Plays; gives the exit code. */
  int play(String port, Project project, LiveShow.Ready ready, LiveStage stage, Terminal terminal)
      throws IOException, InterruptedException {
    LinkRate most = LinkRate.of(project.rig(), baud());
    terminal.out().println(LinkWords.of(most));
    terminal.out().println(LinkWords.of(most, ready.framesPerSecond()));
    terminal.out().flush();
    Report report = new Report(stage, terminal);
    LiveLink link =
        new LiveLink(
            new LiveLink.Settings(port, baud(), LinkIdentity.of(project.rig())),
            new SerialPorts(),
            ready.feed(),
            report::state,
            System::nanoTime);
    stage.run(
        () -> {
          link.run();
          return null;
        },
        link::end);
    terminal.endProgress();
    if (link.figures().sent() > 0) {
      terminal.out().println(LinkWords.of(link.figures()));
    }
    return report.failed.map(trouble -> code(trouble, terminal)).orElse(ExitCode.DONE);
  }

  private static int code(LinkTrouble trouble, Terminal terminal) {
    terminal.refuse(LinkWords.of(trouble));
    boolean project =
        trouble instanceof LinkTrouble.OtherRig
            || trouble instanceof LinkTrouble.OtherVersion
            || trouble instanceof LinkTrouble.FrameTooLong;
    return project ? ExitCode.PROJECT_HAS_ERRORS : ExitCode.NO_READ_OR_WRITE;
  }

  /** Reports how the link is: each change, and figures where a person watches. */
  private static final class Report {
    private final LiveStage stage;
    private final Terminal terminal;
    private String told = "";
    private volatile Optional<LinkTrouble> failed = Optional.empty();

    Report(LiveStage stage, Terminal terminal) {
      this.stage = stage;
      this.terminal = terminal;
    }

    void state(LinkState state) {
      if (state instanceof LinkState.Failed trouble) {
        failed = Optional.of(trouble.trouble());
        return;
      }
      if (state instanceof LinkState.Live) {
        stage.begin();
        terminal.status(LinkWords.of(state));
      }
      String kind = state.getClass().getSimpleName();
      if (!kind.equals(told) && !(state instanceof LinkState.Closed)) {
        told = kind;
        terminal.endProgress();
        terminal
            .err()
            .println(
                state instanceof LinkState.Live live
                    ? LinkWords.connected(live.port())
                    : LinkWords.of(state));
        terminal.err().flush();
      }
    }
  }
}
