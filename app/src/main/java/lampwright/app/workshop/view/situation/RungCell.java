package lampwright.app.workshop.view.situation;

import java.util.Locale;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.situation.Rung;
import lampwright.app.workshop.model.situation.ShowState;
import lampwright.app.workshop.model.situation.Transmitter;
import lampwright.app.workshop.words.Texts;
import org.jspecify.annotations.Nullable;

/** One rung of the ladder: priority, name and scene, when it is active, and whether it is now. */
final class RungCell extends ListCell<Rung> {
  private static final PseudoClass ACTIVE = PseudoClass.getPseudoClass("active");
  private static final double TIP_WIDTH = 420;

  private final Texts texts = Texts.of("situations");
  private final Transmitter transmitter;
  private final Label priority = label("rung-priority");
  private final Label name = label("rung-name");
  private final Label scene = label("rung-scene");
  private final Label state = label("rung-state");
  private final Label when = label("rung-when");
  private final Label lamps = label("rung-when");
  private final HBox all;
  private final Tooltip tip = new Tooltip();

  RungCell(Transmitter transmitter) {
    this.transmitter = transmitter;
    // As wide as the list: long names end in dots and do not make it scroll sideways.
    setPrefWidth(0);
    Region between = new Region();
    HBox.setHgrow(between, Priority.ALWAYS);
    state.setMinWidth(USE_PREF_SIZE);
    // Where it is narrow the scene gives way.
    name.setMinWidth(USE_PREF_SIZE);
    HBox first = new HBox(6, name, scene, between, state);
    first.setAlignment(Pos.BASELINE_LEFT);
    VBox lines = new VBox(first, when, lamps);
    HBox.setHgrow(lines, Priority.ALWAYS);
    lines.setMinWidth(0);
    all = new HBox(8, priority, lines);
    all.getStyleClass().add("rung");
    tip.setWrapText(true);
    tip.setMaxWidth(TIP_WIDTH);
    transmitter.stateProperty().addListener((of, before, now) -> live());
  }

  private static Label label(String style) {
    Label label = new Label();
    label.getStyleClass().add(style);
    label.setMinWidth(0);
    return label;
  }

  @Override
  protected void updateItem(@Nullable Rung rung, boolean empty) {
    super.updateItem(rung, empty);
    if (rung == null || empty) {
      setGraphic(null);
      setTooltip(null);
      setAccessibleText(null);
      return;
    }
    priority.setText(Integer.toString(rung.priority()));
    name.setText(rung.id());
    scene.setText(rung.scene());
    when.setText(rung.when());
    setGraphic(all);
    setTooltip(tip);
    live();
  }

  private void live() {
    Rung rung = getItem();
    if (rung == null || isEmpty()) {
      return;
    }
    Optional<ShowState.RungState> now =
        transmitter
            .stateProperty()
            .get()
            .flatMap(s -> Optional.ofNullable(s.rungs().get(rung.id())));
    boolean active = now.filter(ShowState.RungState::active).isPresent();
    all.pseudoClassStateChanged(ACTIVE, active);
    state.setText(now.map(this::state).orElse(""));
    String why = now.map(transmitter::why).orElse("");
    // While something is active, why is of more use than when.
    when.setText(active ? why : rung.when());
    String held =
        now.filter(n -> n.wanted() > 0)
            .map(n -> texts.get("state.lamps", n.lamps().size(), n.wanted()))
            .orElse("");
    lamps.setText(active ? held : "");
    lamps.setVisible(active && !held.isEmpty());
    lamps.setManaged(lamps.isVisible());
    String words =
        texts.get(
            "rung.words",
            rung.id(),
            Integer.toString(rung.priority()),
            rung.scene(),
            rung.when(),
            now.map(n -> texts.get("rung.now", stateOf(n), lampsOf(n))).orElse(""));
    tip.setText(words.strip());
    setAccessibleText(words.strip());
  }

  private String state(ShowState.RungState now) {
    String seconds = String.format(Locale.ROOT, "%.1f", now.seconds());
    if (now.active()) {
      return texts.get("state.active", seconds);
    }
    return now.last().isPresent() ? texts.get("state.ended", seconds) : texts.get("state.idle");
  }

  // Without the time, which would be read out at every frame.
  private String stateOf(ShowState.RungState now) {
    return (now.active() ? texts.get("state.always") : texts.get("state.idle"))
        + ": "
        + transmitter.why(now);
  }

  private String lampsOf(ShowState.RungState now) {
    return now.lamps().isEmpty()
        ? ""
        : texts.get(
            "state.lampNames", now.lamps().size(), now.wanted(), transmitter.titles(now.lamps()));
  }
}
