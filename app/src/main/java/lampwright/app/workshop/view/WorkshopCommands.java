package lampwright.app.workshop.view;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.BooleanProperty;
import lampwright.app.help.Manual;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.Command.InMenu;
import lampwright.app.workshop.model.command.CommandMenu;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.Sight;
import lampwright.app.workshop.model.live.LiveCommands;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.model.problems.ProblemsModel;
import lampwright.app.workshop.model.ribbon.LampCueCommands;
import lampwright.app.workshop.model.ribbon.MarkerCommands;
import lampwright.app.workshop.model.ribbon.RibbonCommands;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.model.shelf.ShelfCommands;
import lampwright.app.workshop.model.situation.SituationCommands;
import lampwright.app.workshop.view.help.HelpWindow;
import lampwright.engine.rig.View;

/** Every command of the workshop. To add one: a line here or in its model's list, and its words. */
final class WorkshopCommands {
  /** By which the drawing is looked at nearer at once. */
  private static final double ZOOM = 1.25;

  /** By which a lamp is turned at once. */
  private static final double TURN_DEGREES = 15;

  /**
   * What only the window can do.
   *
   * @param export opens the export
   * @param offerKinds lets the builder choose a pattern for a new cue
   * @param names are edited in their places
   * @param markers what is done to markers
   * @param showShelf brings the patterns shelf into sight
   * @param situations brings the situations into sight
   * @param link brings the bench link into sight
   * @param help what the window explains
   * @param dark whether the window is dark
   * @param start shows the start sheet
   */
  record Window(
      Runnable export,
      Runnable offerKinds,
      Names names,
      MarkerCommands markers,
      Runnable showShelf,
      Runnable situations,
      Runnable link,
      Help help,
      BooleanProperty dark,
      Runnable start) {}

  /**
   * Names that are edited in their places.
   *
   * @param lamp of the selected lamp
   * @param group of its group
   * @param marker of the selected marker
   */
  record Names(Runnable lamp, Runnable group, Runnable marker) {}

  /**
   * What the window explains.
   *
   * @param page shows a page of the manual by its id
   * @param tour begins the tour
   * @param about says what this program is
   */
  record Help(Consumer<String> page, Runnable tour, Runnable about) {}

  private WorkshopCommands() {}

  static Commands of(WorkshopParts parts, Window window) {
    return new Commands(
        Stream.of(
                parts.files().commands(),
                List.of(
                    Command.of(
                            "workshop.menu.export",
                            new InMenu(CommandMenu.PROJECT, 2),
                            window.export())
                        .withShortcut("Shortcut+E"),
                    Command.of(
                            "workshop.menu.sheet",
                            new InMenu(CommandMenu.PROJECT, 2),
                            parts.buildSheet()::build)
                        .withShortcut("Shortcut+Shift+B"),
                    Command.of(
                            "workshop.menu.picture",
                            new InMenu(CommandMenu.PROJECT, 2),
                            parts.modelPicture()::make)
                        .withShortcut("Shortcut+Shift+I"),
                    Command.of(
                            "start.act.sheet", new InMenu(CommandMenu.PROJECT, 1), window.start())
                        .withShortcut("Shortcut+Shift+N")),
                RibbonCommands.cues(parts.cueCommands(), window.offerKinds()),
                new LampCueCommands(parts.bench(), parts.dialogs()).commands(),
                parts.ribbons().keyframes().commands(),
                ShelfCommands.of(parts.shelf(), window.showShelf()),
                rig(parts.rigCommands()),
                SituationCommands.of(parts.situations(), parts.transmitter(), window.situations()),
                play(parts.player()),
                LiveCommands.of(
                    parts.link(), parts.walk(), parts.order(), parts.rigCommands(), window.link()),
                drawing(parts.drawing(), parts::choosePicture),
                RibbonCommands.view(parts.ribbons()),
                RibbonCommands.rows(
                    parts.ribbons(),
                    parts.cueCommands(),
                    window.names().lamp(),
                    window.names().group()),
                RibbonCommands.time(parts.ribbons(), window.markers(), window.names().marker()),
                parts.guide().commands().commands(),
                window(parts, window),
                help(parts.problems(), window.help()))
            .flatMap(List::stream)
            .toList());
  }

  private static List<Command> rig(RigCommands commands) {
    InMenu rig = new InMenu(CommandMenu.RIG, 1);
    return List.of(
        Command.of("rig.act.addChain", rig, commands::addChain),
        Command.of("rig.act.addOutput", rig, commands::addOutput),
        Command.of("rig.act.addInput", rig, commands::addInput),
        Command.of("rig.act.makeLamp", rig, commands::makeLamp).withShortcut("Shortcut+L"),
        Command.of("rig.act.makeLamps", rig, commands::makeLamps).withShortcut("Shortcut+Shift+P"),
        Command.of("rig.act.benchTest", rig, commands::benchTest).withShortcut("Shortcut+B"),
        Command.of("rig.act.wireEarlier", rig, () -> commands.stepLamp(-1)),
        Command.of("rig.act.wireLater", rig, () -> commands.stepLamp(1)),
        Command.of("rig.act.addType", rig, commands::addType),
        Command.of("rig.act.addScene", rig, commands::addScene),
        Command.of("rig.act.copyScene", rig, commands::copyScene),
        Command.of("rig.act.remove", rig, commands::remove));
  }

  private static List<Command> play(Player player) {
    InMenu play = new InMenu(CommandMenu.PLAY, 1);
    return List.of(
        Command.of("drawing.act.play", play, player::toggle).withShortcut("Space"),
        Command.of("drawing.act.back", play, () -> player.step(-1)).withShortcut("Comma"),
        Command.of("drawing.act.forward", play, () -> player.step(1)).withShortcut("Period"),
        Command.of("drawing.act.start", play, player::toStart).withShortcut("Home"),
        Command.of("drawing.act.end", play, player::toEnd).withShortcut("End"),
        Command.toggle("drawing.act.loop", play, player.loopingProperty()).withShortcut("L"),
        Command.of(
                "drawing.act.slower",
                play,
                () -> player.paceProperty().set(player.paceProperty().get().next()))
            .withShortcut("P"));
  }

  private static List<Command> drawing(DrawingModel model, Runnable choosePicture) {
    InMenu show = new InMenu(CommandMenu.SHOW, 1);
    return List.of(
        view("drawing.act.view.front", model, View.FRONT).withShortcut("Shortcut+1"),
        view("drawing.act.view.side", model, View.SIDE).withShortcut("Shortcut+2"),
        view("drawing.act.view.rear", model, View.REAR).withShortcut("Shortcut+3"),
        view("drawing.act.view.top", model, View.TOP).withShortcut("Shortcut+4"),
        Command.toggle("drawing.act.night", show, model.sheet().nightProperty()),
        Command.of("drawing.act.brighter", show, () -> model.exposures().step(1)),
        Command.of("drawing.act.darker", show, () -> model.exposures().step(-1)),
        Command.of("drawing.act.byMeter", show, model.exposures()::byMeter)
            .withShortcut("Shortcut+Shift+E"),
        Command.of("drawing.act.hereToo", show, model::showHereToo),
        Command.of("drawing.act.turn", show, () -> model.turn(TURN_DEGREES)),
        Command.of("drawing.act.mirror", show, model::mirror),
        Command.toggle("drawing.act.mirroring", show, model.mirroringProperty()),
        Command.of("drawing.act.zoomIn", show, () -> model.zoom(ZOOM))
            .withShortcut("Shortcut+Shift+Equals"),
        Command.of("drawing.act.zoomOut", show, () -> model.zoom(1 / ZOOM))
            .withShortcut("Shortcut+Shift+Minus"),
        Command.of("drawing.act.zoomFit", show, () -> model.sightProperty().set(Sight.WHOLE))
            .withShortcut("Shortcut+Shift+0"),
        Command.of("drawing.act.picture", show, choosePicture),
        Command.of("drawing.act.outline", show, () -> model.picture(Optional.empty())));
  }

  private static Command view(String id, DrawingModel model, View view) {
    return Command.of(id, new InMenu(CommandMenu.SHOW, 1), view, model.sheet().viewProperty()::set);
  }

  private static List<Command> window(WorkshopParts parts, Window window) {
    InMenu show = new InMenu(CommandMenu.SHOW, 3);
    return List.of(
        Command.toggle("workshop.menu.dark", show, window.dark()).withShortcut("Shortcut+Shift+D"),
        Command.of("workshop.menu.stopPacking", show, parts.packs()::cancel)
            .when(parts.packs().progressProperty().lessThan(1)));
  }

  private static List<Command> help(ProblemsModel problems, Help help) {
    InMenu pages = new InMenu(CommandMenu.HELP, 1);
    InMenu program = new InMenu(CommandMenu.HELP, 2);
    return List.of(
        Command.of("help.menu.keys", pages, HelpWindow.KEYS, help.page()).withShortcut("F1"),
        Command.of("help.menu.guide", pages, Manual.GUIDE, help.page()),
        Command.of("help.menu.findings", pages, Manual.FINDINGS, help.page()),
        Command.of("help.menu.explain", pages, problems::explain).withShortcut("Shift+F1"),
        Command.of("help.menu.tour", program, help.tour()),
        Command.of("help.menu.about", program, help.about()));
  }
}
