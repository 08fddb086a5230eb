package lampwright.app.workshop.model.ribbon;

import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import lampwright.app.workshop.model.Act;

/** What can be done to cues and to the look at time, for the menus. */
public final class RibbonActs {
  private RibbonActs() {}

  /**
   * What is done to cues.
   *
   * @param offerKinds lets the builder choose a pattern for a new cue
   */
  public static List<Act> cues(CueHands hands, Runnable offerKinds) {
    return List.of(
        new Act("act.add", "", hands.anyLampProperty(), offerKinds),
        new Act("act.split", "Shortcut+T", hands.anyCueProperty(), hands::split),
        new Act("act.duplicate", "Shortcut+D", hands.anyCueProperty(), hands::duplicate),
        new Act("act.cut", "Shortcut+X", hands.anyCueProperty(), hands::cut),
        new Act("act.copy", "Shortcut+C", hands.anyCueProperty(), hands::copy),
        new Act("act.paste", "Shortcut+V", hands.anyCopiedProperty(), hands::paste),
        new Act("act.remove", "", hands.anyCueProperty(), hands::remove),
        new Act("act.chooseAll", "Shortcut+A", always(), hands::chooseAll));
  }

  /** How time is looked at. */
  public static List<Act> look(RibbonsModel model) {
    return List.of(
        new Act("act.closer", "Shortcut+Equals", always(), () -> model.zoom(1.5)),
        new Act("act.further", "Shortcut+Minus", always(), () -> model.zoom(1 / 1.5)),
        new Act("act.showAll", "Shortcut+0", always(), model::showAll),
        new Act("act.showChosen", "Shortcut+J", always(), model::showChosen),
        new Act(
            "act.unfold",
            "Shortcut+U",
            always(),
            () -> model.bench().lamp().ifPresent(l -> model.toggleUnfolded(l.id()))),
        new Act(
            "act.snap",
            "Shortcut+M",
            always(),
            () -> model.snappingProperty().set(!model.snappingProperty().get())));
  }

  private static ObservableBooleanValue always() {
    return Bindings.createBooleanBinding(() -> true);
  }
}
