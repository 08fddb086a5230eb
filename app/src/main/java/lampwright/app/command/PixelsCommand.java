package lampwright.app.command;

import java.util.Locale;
import java.util.concurrent.Callable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.SourcedNumber;
import picocli.CommandLine.Command;

/** Lists the pixel types that every project knows. */
@Command(
    name = "pixels",
    mixinStandardHelpOptions = true,
    description = "Lists the built-in pixel types, their numbers and where these come from.",
    footer = {"", "Example:", "  lampwright pixels"})
final class PixelsCommand implements Callable<Integer> {
  private final Terminal terminal;

  PixelsCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    for (PixelType type : BuiltInPixelTypes.all()) {
      print(type);
    }
    return ExitCode.DONE;
  }

  private void print(PixelType type) {
    terminal.out().println(type.id());
    for (SourcedNumber number : BuiltInPixelTypes.numbers(type.id())) {
      terminal
          .out()
          .printf(
              Locale.ROOT,
              "  %-14s %-8s %s: %s%n",
              number.item(),
              number.value(),
              number.source(),
              number.document());
    }
  }
}
