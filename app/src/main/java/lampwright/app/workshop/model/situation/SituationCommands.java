package lampwright.app.workshop.model.situation;

import java.util.List;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;

/** What can be done with situations from menus and keys. */
public final class SituationCommands {
  private SituationCommands() {}

  /**
   * All of them.
   *
   * @param show brings the situations into sight
   */
  public static List<Command> of(SituationsModel model, Transmitter transmitter, Runnable show) {
    Command.InMenu rig = new Command.InMenu(CommandMenu.RIG, 2);
    Command.InMenu play = new Command.InMenu(CommandMenu.PLAY, 5);
    return List.of(
        Command.of("situations.act.show", new Command.InMenu(CommandMenu.SHOW, 2), show)
            .withShortcut("F5"),
        Command.of(
            "situations.act.add",
            rig,
            () -> {
              show.run();
              model.add();
            }),
        Command.of("situations.act.raise", rig, () -> model.raise(1)),
        Command.of("situations.act.lower", rig, () -> model.raise(-1)),
        Command.of("situations.act.remove", rig, model::remove),
        Command.toggle("situations.act.transmitter", play, transmitter.onProperty())
            .withShortcut("F7"),
        Command.of("situations.act.centre", play, transmitter::centre));
  }
}
