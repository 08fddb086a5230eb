package lampwright.app.command;

import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.app.outline.Models;
import lampwright.app.outline.UsualLamp;
import lampwright.app.outline.UsualLamp.UsualFitting;
import lampwright.app.outline.UsualLamps;
import lampwright.engine.document.ModelKind;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists the kinds of model, or the lamps that one usually has. */
@Command(
    name = "models",
    mixinStandardHelpOptions = true,
    description = {
      "Lists the kinds of model, or the groups of lamps of one: how many it usually has and can have,"
          + " and what each lamp consists of."
    },
    footer = {"", "Examples:", "  lampwright models", "  lampwright models launch"})
final class ModelsCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Parameters(arity = "0..1", paramLabel = "KIND", description = "lists the lamps of this kind")
  private Optional<String> kind = Optional.empty();

  ModelsCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    if (kind.isPresent()) {
      UsualLamps.of(NewCommand.kind(spec, "KIND", kind.get())).forEach(this::print);
    } else {
      for (ModelKind each : ModelKind.values()) {
        terminal
            .out()
            .printf(
                Locale.ROOT,
                "%-18s %-24s also: %s%n",
                each.key(),
                Models.title(each),
                String.join(", ", Models.otherWords(each)));
      }
    }
    return ExitCode.DONE;
  }

  private void print(UsualLamp group) {
    String fitting =
        group.fitting() instanceof UsualFitting.Pixels pixels
            ? pixels.count() + (pixels.count() == 1 ? " pixel each" : " pixels each")
            : "plain LED";
    terminal
        .out()
        .printf(
            Locale.ROOT,
            "%-18s %-24s %2d of %2d  %s%n",
            group.key(),
            group.title(),
            group.count(),
            group.greatest(),
            fitting);
  }
}
