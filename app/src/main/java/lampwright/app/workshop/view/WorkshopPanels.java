package lampwright.app.workshop.view;

import java.util.List;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import lampwright.app.workshop.view.cue.CueSettingsView;
import lampwright.app.workshop.view.live.BenchLinkView;
import lampwright.app.workshop.view.rig.RigView;
import lampwright.app.workshop.view.situation.DriveView;
import lampwright.app.workshop.view.situation.SituationsView;
import lampwright.app.workshop.words.Texts;

/** Every panel of the workshop. To add one: its view, its model, a line here and its words. */
final class WorkshopPanels {
  static final String CUE = "cue";
  static final String SHELF = "shelf";
  static final String RIG = "rig";
  static final String SITUATIONS = "situations";
  static final String DRIVE = "drive";
  static final String LINK = "link";
  static final String PROBLEMS = "problems";

  private WorkshopPanels() {}

  static List<Panel> of(WorkshopParts parts, CueSettingsView cues, Supplier<? extends Node> shelf) {
    return List.of(
        new Panel(CUE, words(CUE), Panel.Where.TAB, () -> cues),
        new Panel(SHELF, words(SHELF), Panel.Where.TAB, shelf::get),
        new Panel(
            RIG, words(RIG), Panel.Where.TAB, () -> new RigView(parts.rig(), parts.rigCommands())),
        new Panel(
            SITUATIONS,
            words(SITUATIONS),
            Panel.Where.TAB,
            () ->
                new SituationsView(
                    parts.situations(), parts.transmitter(), parts.rigCommands()::addInput)),
        new Panel(DRIVE, words(DRIVE), Panel.Where.TAB, () -> new DriveView(parts.drive())),
        new Panel(
            LINK,
            words(LINK),
            Panel.Where.TAB,
            () -> new BenchLinkView(parts.bench(), parts.link(), parts.walk(), parts.order())),
        new Panel(
            PROBLEMS,
            words(PROBLEMS),
            Panel.Where.BESIDE,
            () -> new ProblemsView(parts.problems())));
  }

  private static ObservableValue<String> words(String id) {
    return new ReadOnlyStringWrapper(Texts.of("workshop").get("tab." + id)).getReadOnlyProperty();
  }
}
