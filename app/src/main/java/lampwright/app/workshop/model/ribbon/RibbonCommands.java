package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import lampwright.app.workshop.model.LampSigns.Sign;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.CommandMenu;

/** What can be done to cues and to the look at time. */
public final class RibbonCommands {
  /** What a right click on a cue offers. */
  public static final List<String> ON_CUE =
      List.of(
          "ribbons.act.cut",
          "ribbons.act.copy",
          "ribbons.act.paste",
          "ribbons.act.duplicate",
          "ribbons.act.split",
          "ribbons.act.remove",
          "",
          "ribbons.act.phaseEarlier",
          "ribbons.act.phaseLater",
          "ribbons.act.keyframeAdd",
          "ribbons.act.keyframeRemove",
          "",
          "ribbons.act.showChosen");

  /** What it offers on an empty part of a ribbon. */
  public static final List<String> ON_RIBBON =
      List.of(
          "ribbons.act.add",
          "ribbons.act.paste",
          "ribbons.act.chooseAll",
          "",
          "ribbons.act.unfold",
          "ribbons.act.heights");

  /** What it offers on the title of a lamp. */
  public static final List<String> ON_TITLE =
      List.of(
          "ribbons.act.rename",
          "ribbons.act.renameGroup",
          "ribbons.act.add",
          "",
          "ribbons.act.mute",
          "ribbons.act.solo",
          "ribbons.act.lock",
          "ribbons.act.unmute",
          "",
          "ribbons.act.unfold",
          "ribbons.act.fold",
          "ribbons.act.foldAll",
          "ribbons.act.heights");

  /** What it offers on the time line. */
  public static final List<String> ON_TIME_LINE =
      List.of(
          "ribbons.act.marker",
          "ribbons.act.markerRename",
          "ribbons.act.markerRemove",
          "",
          "ribbons.act.rangeFrom",
          "ribbons.act.rangeTo",
          "ribbons.act.rangeOff",
          "",
          "ribbons.act.closer",
          "ribbons.act.further",
          "ribbons.act.showAll");

  private RibbonCommands() {}

  /**
   * What is done to markers and to the range that is looped.
   *
   * @param rename edits the name of the selected marker
   */
  public static List<Command> time(RibbonsModel model, MarkerCommands markers, Runnable rename) {
    Command.InMenu marks = new Command.InMenu(CommandMenu.PLAY, 3);
    Command.InMenu range = new Command.InMenu(CommandMenu.PLAY, 2);
    ObservableBooleanValue marked =
        Bindings.createBooleanBinding(
            () -> model.markerProperty().get().isPresent(), model.markerProperty());
    ObservableBooleanValue ranged =
        Bindings.createBooleanBinding(
            () -> model.playhead().rangeProperty().get().isPresent(),
            model.playhead().rangeProperty());
    return List.of(
        Command.of("ribbons.act.rangeFrom", range, model.playhead()::beginRange).withShortcut("I"),
        Command.of("ribbons.act.rangeTo", range, model.playhead()::endRange).withShortcut("O"),
        Command.of(
                "ribbons.act.rangeOff",
                range,
                () -> model.playhead().rangeProperty().set(Optional.empty()))
            .when(ranged)
            .withShortcut("U"),
        Command.of("ribbons.act.marker", marks, markers::add).withShortcut("M"),
        Command.of("ribbons.act.markerNext", marks, () -> markers.step(1)).withShortcut("N"),
        Command.of("ribbons.act.markerPrevious", marks, () -> markers.step(-1)).withShortcut("B"),
        Command.of("ribbons.act.markerRename", marks, rename).when(marked).withShortcut("Shift+F2"),
        Command.of("ribbons.act.markerRemove", marks, markers::remove).when(marked));
  }

  /**
   * What is done to the rows.
   *
   * @param rename edits the name of the selected lamp
   * @param renameGroup edits the name of its group
   */
  public static List<Command> rows(
      RibbonsModel model, CueCommands commands, Runnable rename, Runnable renameGroup) {
    Command.InMenu show = new Command.InMenu(CommandMenu.SHOW, 2);
    Command.InMenu cues = new Command.InMenu(CommandMenu.CUES, 3);
    Command.InMenu lamps = new Command.InMenu(CommandMenu.RIG, 2);
    return List.of(
        cue(cues, commands, "ribbons.act.phaseEarlier", () -> commands.shiftPhase(-1))
            .withShortcut("Open_Bracket"),
        cue(cues, commands, "ribbons.act.phaseLater", () -> commands.shiftPhase(1))
            .withShortcut("Close_Bracket"),
        Command.of("ribbons.act.rename", lamps, rename)
            .when(commands.anyLampProperty())
            .withShortcut("F2"),
        Command.of("ribbons.act.renameGroup", lamps, renameGroup)
            .when(
                Bindings.createBooleanBinding(
                    () -> model.bench().lamp().filter(l -> !l.group().isEmpty()).isPresent(),
                    model.bench().selectionProperty(),
                    model.bench().projectProperty()))
            .withShortcut("Shortcut+F2"),
        sign(lamps, model, commands, "ribbons.act.mute", Sign.MUTE).withShortcut("X"),
        sign(lamps, model, commands, "ribbons.act.solo", Sign.SOLO).withShortcut("S"),
        sign(lamps, model, commands, "ribbons.act.lock", Sign.LOCK).withShortcut("K"),
        Command.of(
            "ribbons.act.unmute",
            lamps,
            () -> model.sheet().signsProperty().set(model.sheet().signs().allShown())),
        Command.of("ribbons.act.heights", show, model.rows()::nextHeight).withShortcut("H"),
        Command.of(
                "ribbons.act.fold",
                show,
                () -> model.bench().lamp().ifPresent(l -> model.rows().toggleFolded(l.group())))
            .withShortcut("F"),
        Command.of("ribbons.act.foldAll", show, model.rows()::toggleAllFolded));
  }

  private static Command sign(
      Command.Place place, RibbonsModel model, CueCommands commands, String id, Sign sign) {
    return Command.of(id, place, () -> model.toggle(sign, model.bench().selection().lamps()))
        .when(commands.anyLampProperty());
  }

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
        Command.of("ribbons.act.closer", show, () -> model.time().zoom(1.5))
            .withShortcut("Shortcut+Equals"),
        Command.of("ribbons.act.further", show, () -> model.time().zoom(1 / 1.5))
            .withShortcut("Shortcut+Minus"),
        Command.of("ribbons.act.showAll", show, model.time()::showAll).withShortcut("Shortcut+0"),
        Command.of("ribbons.act.showChosen", show, model.time()::showChosen)
            .withShortcut("Shortcut+J"),
        Command.of(
                "ribbons.act.unfold",
                show,
                () -> model.bench().lamp().ifPresent(l -> model.rows().toggleUnfolded(l.id())))
            .withShortcut("Shortcut+U"),
        Command.toggle("ribbons.act.snap", show, model.snapping().onProperty())
            .withShortcut("Shortcut+M"));
  }
}
