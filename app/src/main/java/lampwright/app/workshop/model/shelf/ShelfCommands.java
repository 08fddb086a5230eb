package lampwright.app.workshop.model.shelf;

import java.util.List;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;

/** What can be done with the patterns shelf. */
public final class ShelfCommands {
  private ShelfCommands() {}

  /**
   * All of them.
   *
   * @param show brings the shelf into sight
   */
  public static List<Command> of(ShelfModel model, Runnable show) {
    Command.InMenu cues = new Command.InMenu(CommandMenu.CUES, 3);
    Command.InMenu view = new Command.InMenu(CommandMenu.SHOW, 2);
    return List.of(
        Command.of("shelf.act.show", view, show).withShortcut("F4"),
        Command.toggle("shelf.act.motion", view, model.motionProperty()),
        Command.of("shelf.act.place", cues, model::place)
            .when(model.anySelectedProperty().and(model.commands().anyLampProperty()))
            .withShortcut("Shortcut+Enter"),
        Command.of("shelf.act.replace", cues, model::replace)
            .when(model.anySelectedProperty().and(model.commands().anyCueProperty()))
            .withShortcut("Shortcut+Shift+Enter"),
        Command.of("shelf.act.save", cues, () -> model.saveInProject(model.suggestedName()))
            .when(model.commands().anyCueProperty()),
        Command.of("shelf.act.saveAll", cues, () -> model.saveForAll(model.suggestedName()))
            .when(model.commands().anyCueProperty()),
        Command.of("shelf.act.delete", cues, model::delete).when(model.ownSelectedProperty()));
  }
}
