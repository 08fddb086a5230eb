package lampwright.app.workshop.view.rig;

import java.util.List;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.ColourDropper;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.model.rig.RigModel;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.app.workshop.view.PanelParts;
import lampwright.app.workshop.view.Theme;
import lampwright.app.workshop.view.cue.ColourContext;
import lampwright.app.workshop.view.cue.ColourFields;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.app.workshop.view.form.FormPane;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.rig.PixelRun;
import org.jspecify.annotations.Nullable;

/**
 * The rig editor: the parts, and beside them one sheet to scroll through with the form of the
 * selected part and the wiring.
 */
public final class RigView extends HBox {
  private static final double PARTS_EM = 13;
  private static final List<String> PART_BUTTONS =
      List.of("addChain", "addOutput", "addInput", "addType", "addScene", "remove");
  private static final List<String> WIRING_BUTTONS = List.of("makeLamp", "makeLamps", "benchTest");

  private final Texts texts = Texts.of("rig");
  private final RigModel model;
  private final RigCommands commands;
  private final ListView<RigPart> list = new ListView<>();
  private final WiringView wiring;
  private boolean lists;

  public RigView(RigModel model, RigCommands commands) {
    this.model = model;
    this.commands = commands;
    getStyleClass().add("rig");
    setId("rig");
    wiring = new WiringView(model, commands);
    FormContext context = new FormContext();
    ColourFields.addTo(
        context,
        new ColourContext(
            java.util.Optional::<PixelLook>empty,
            new SimpleObjectProperty<>(List.<Colour>of()),
            new ColourDropper()));
    context.<Kind.Runs, List<PixelRun>>with(
        Kind.Runs.class, (kind, slot) -> RunsField.of(slot, context.words().label(slot.key())));
    FormPane form = new FormPane(context, model.formProperty());
    Label caution = note("rig-caution");
    Label notes = note("rig-notes");
    Runnable show =
        () -> {
          show(caution, model.caution());
          show(notes, model.notes());
          lists = true;
          list.getItems().setAll(model.parts());
          list.getSelectionModel().select(model.chosenProperty().get());
          lists = false;
        };
    model.chosenProperty().addListener((of, before, now) -> show.run());
    model.bench().projectProperty().addListener((of, before, now) -> show.run());
    list.setId("rig-parts");
    list.setAccessibleText(texts.get("parts"));
    list.setCellFactory(view -> new PartCell());
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (of, before, now) -> {
              if (!lists && now != null) {
                model.chosenProperty().set(now);
                if (now instanceof RigPart.OfLamp lamp) {
                  model.bench().select(model.bench().selection().withLamps(List.of(lamp.id())));
                }
                if (now instanceof RigPart.OfScene scene) {
                  model.bench().select(model.bench().selection().withScene(scene.id()));
                }
              }
            });
    show.run();
    list.setMinWidth(PARTS_EM * Theme.LEAST_SIZE);
    list.setPrefWidth(PARTS_EM * Theme.LEAST_SIZE);
    VBox values = new VBox(buttons(PART_BUTTONS), caution, form, notes);
    VBox drawn = new VBox(buttons(WIRING_BUTTONS), wiring);
    ScrollPane sheet = new ScrollPane(new FormAndWiring(values, drawn));
    sheet.setId("rig-sheet");
    sheet.getStyleClass().add("form");
    sheet.setFitToWidth(true);
    sheet.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    HBox.setHgrow(sheet, Priority.ALWAYS);
    getChildren().setAll(list, sheet);
  }

  private static Label note(String style) {
    Label note = new Label();
    note.setWrapText(true);
    note.setMinHeight(USE_PREF_SIZE);
    note.getStyleClass().add(style);
    return note;
  }

  private static void show(Label note, String text) {
    note.setText(text);
    note.setManaged(!text.isEmpty());
    note.setVisible(!text.isEmpty());
  }

  /** Gives the focus to the list of parts. */
  public void focusParts() {
    list.requestFocus();
  }

  private FlowPane buttons(List<String> keys) {
    FlowPane buttons = new FlowPane(4, 4);
    buttons.getStyleClass().add("rig-buttons");
    keys.forEach(key -> buttons.getChildren().add(button(key, run(key))));
    return buttons;
  }

  private Runnable run(String key) {
    return switch (key) {
      case "addChain" -> commands::addChain;
      case "addOutput" -> commands::addOutput;
      case "addInput" -> commands::addInput;
      case "addType" -> commands::addType;
      case "addScene" -> commands::addScene;
      case "remove" -> commands::remove;
      case "makeLamp" -> commands::makeLamp;
      case "makeLamps" -> commands::makeLamps;
      case "benchTest" -> commands::benchTest;
      default -> throw new IllegalArgumentException(key);
    };
  }

  private Button button(String key, Runnable run) {
    return PanelParts.button("rig-" + key, texts.get("button." + key), run);
  }

  private final class PartCell extends ListCell<RigPart> {
    // As wide as the list: long names end in dots and do not make it scroll sideways.
    PartCell() {
      setPrefWidth(0);
    }

    @Override
    protected void updateItem(@Nullable RigPart part, boolean empty) {
      super.updateItem(part, empty);
      setText(part == null || empty ? null : model.title(part));
      setTooltip(part == null || empty ? null : new Tooltip(model.title(part)));
    }
  }
}
