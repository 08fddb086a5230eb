package lampwright.app.workshop.model.ribbon;

import java.util.List;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;

/** What can be done to cues and to the look at time. */
public final class RibbonCommands {
  private RibbonCommands() {}

  /**
   * What is done to cues.
   *
   * @param offerKinds lets the builder choose a pattern for a new cue
   */
  public static List<Command> cues(CueCommands commands, Runnable offerKinds) {
    Command.InMenu cues = new Command.InMenu(CommandMenu.CUES, 2);
    return List.of(
        Command.of("ribbons.act.add", cues, offerKinds).when(commands.anyLampProperty()),
        cue(cues, commands, "ribbons.act.split", commands::split).withShortcut("Shortcut+T"),
        cue(cues, commands, "ribbons.act.duplicate", commands::duplicate)
            .withShortcut("Shortcut+D"),
        cue(cues, commands, "ribbons.act.cut", commands::cut).withShortcut("Shortcut+X"),
        cue(cues, commands, "ribbons.act.copy", commands::copy).withShortcut("Shortcut+C"),
        Command.of("ribbons.act.paste", cues, commands::paste)
            .when(commands.anyCopiedProperty())
            .withShortcut("Shortcut+V"),
        cue(cues, commands, "ribbons.act.remove", commands::remove),
        Command.of("ribbons.act.chooseAll", cues, commands::chooseAll).withShortcut("Shortcut+A"));
  }

  private static Command cue(Command.Place place, CueCommands commands, String id, Runnable run) {
    return Command.of(id, place, run).when(commands.anyCueProperty());
  }

  /** How time is looked at. */
  public static List<Command> view(RibbonsModel model) {
    Command.InMenu show = new Command.InMenu(CommandMenu.SHOW, 2);
    return List.of(
        Command.of("ribbons.act.closer", show, () -> model.zoom(1.5))
            .withShortcut("Shortcut+Equals"),
        Command.of("ribbons.act.further", show, () -> model.zoom(1 / 1.5))
            .withShortcut("Shortcut+Minus"),
        Command.of("ribbons.act.showAll", show, model::showAll).withShortcut("Shortcut+0"),
        Command.of("ribbons.act.showChosen", show, model::showChosen).withShortcut("Shortcut+J"),
        Command.of(
                "ribbons.act.unfold",
                show,
                () -> model.bench().lamp().ifPresent(l -> model.toggleUnfolded(l.id())))
            .withShortcut("Shortcut+U"),
        Command.toggle("ribbons.act.snap", show, model.snappingProperty())
            .withShortcut("Shortcut+M"));
  }
}
