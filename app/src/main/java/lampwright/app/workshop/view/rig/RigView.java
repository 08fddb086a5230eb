package lampwright.app.workshop.view.rig;

import java.util.List;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.ColourDropper;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.model.rig.RigModel;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.app.workshop.view.cue.ColourContext;
import lampwright.app.workshop.view.cue.ColourFields;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.app.workshop.view.form.FormView;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.rig.PixelRun;
import org.jspecify.annotations.Nullable;

/** The rig editor: the parts, the wiring, and the form of the selected part. */
public final class RigView extends SplitPane {
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
    FormView form = new FormView(context, model.formProperty());
    Label notes = new Label();
    notes.setWrapText(true);
    notes.getStyleClass().add("rig-notes");
    Runnable show =
        () -> {
          notes.setText(model.notes());
          notes.setManaged(!notes.getText().isEmpty());
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
    VBox left = new VBox(list, buttons());
    VBox.setVgrow(list, Priority.ALWAYS);
    ScrollPane noted = new ScrollPane(notes);
    noted.setFitToWidth(true);
    noted.setMaxHeight(110);
    noted.getStyleClass().add("form");
    VBox right = new VBox(form, noted);
    VBox.setVgrow(form, Priority.ALWAYS);
    getItems().setAll(left, wiring, right);
    setDividerPositions(0.2, 0.55);
  }

  /** Gives the focus to the list of parts. */
  public void focusParts() {
    list.requestFocus();
  }

  private FlowPane buttons() {
    FlowPane buttons = new FlowPane(4, 4);
    buttons.getStyleClass().add("rig-buttons");
    buttons
        .getChildren()
        .setAll(
            button("addChain", commands::addChain),
            button("addOutput", commands::addOutput),
            button("makeLamp", commands::makeLamp),
            button("makeLamps", commands::makeLamps),
            button("addType", commands::addType),
            button("addScene", commands::addScene),
            button("benchTest", commands::benchTest),
            button("remove", commands::remove));
    return buttons;
  }

  private Button button(String key, Runnable run) {
    Button button = new Button(texts.get("button." + key));
    button.setId("rig-" + key);
    button.getStyleClass().add("small-toggle");
    button.setOnAction(event -> run.run());
    return button;
  }

  private final class PartCell extends ListCell<RigPart> {
    @Override
    protected void updateItem(@Nullable RigPart part, boolean empty) {
      super.updateItem(part, empty);
      setText(part == null || empty ? null : model.title(part));
    }
  }
}
