package lampwright.app.command;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * The commands by the word that runs each. A command is described by its annotations, which take
 * long to read; so of a command line that begins with the word of a command, that command alone is
 * described.
 */
final class Commands {
  static final String PROGRAM = "lampwright";

  /** In the order in which help lists them. */
  private static final Map<String, Function<Terminal, Object>> ALL = new LinkedHashMap<>();

  static {
    ALL.put(OpenCommand.NAME, OpenCommand::new);
    ALL.put("new", NewCommand::new);
    ALL.put("check", CheckCommand::new);
    ALL.put("measure", MeasureCommand::new);
    ALL.put("export", ExportCommand::new);
    ALL.put("prove", ProveCommand::new);
    ALL.put("rehearse", RehearseCommand::new);
    ALL.put("live", LiveCommand::new);
    ALL.put("picture", PictureCommand::new);
    ALL.put("sheet", SheetCommand::new);
    ALL.put("explain", ExplainCommand::new);
    ALL.put("models", ModelsCommand::new);
    ALL.put("pixels", PixelsCommand::new);
  }

  private Commands() {}

  /** The program with all that this command line can ask for. */
  static CommandLine of(Terminal terminal, String... arguments) {
    String first = arguments.length == 0 ? "" : arguments[0];
    if (ALL.containsKey(first)) {
      CommandLine program = new CommandLine(CommandSpec.create().name(PROGRAM));
      add(program, first, terminal);
      return program;
    }
    CommandLine program =
        new CommandLine(new LampwrightCommand(terminal), new TerminalFactory(terminal));
    ALL.keySet().forEach(name -> add(program, name, terminal));
    return program;
  }

  private static void add(CommandLine program, String name, Terminal terminal) {
    program.addSubcommand(
        name, new CommandLine(ALL.get(name).apply(terminal), new TerminalFactory(terminal)));
  }
}
