package lampwright.app.workshop.model.live;

import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.app.workshop.model.rig.RigCommands;

/** What can be done with the bench link from menus and keys. */
public final class LiveCommands {
  private LiveCommands() {}

  /**
   * All of them.
   *
   * @param rig knows the chain that is selected
   * @param show brings the bench link into sight
   */
  public static List<Command> of(
      BenchLink link, NamingWalk walk, OrderFinder order, RigCommands rig, Runnable show) {
    Command.InMenu play = new Command.InMenu(CommandMenu.PLAY, 6);
    Command.InMenu parts = new Command.InMenu(CommandMenu.RIG, 3);
    ObservableBooleanValue ready =
        Bindings.createBooleanBinding(
            () -> link.connectedProperty().get() || link.portProperty().get().isPresent(),
            link.connectedProperty(),
            link.portProperty());
    return List.of(
        Command.of("live.act.show", new Command.InMenu(CommandMenu.SHOW, 2), show)
            .withShortcut("F8"),
        Command.of("live.act.connect", play, link::toggle).when(ready).withShortcut("F9"),
        Command.toggle("live.act.selectedOnly", play, link.selectedOnlyProperty()),
        Command.of(
                "live.act.name",
                parts,
                () -> {
                  show.run();
                  rig.testable().ifPresent(walk::start);
                })
            .when(link.connectedProperty()),
        Command.of(
                "live.act.order",
                parts,
                () -> {
                  show.run();
                  rig.testable().ifPresent(order::start);
                })
            .when(link.connectedProperty()));
  }
}
