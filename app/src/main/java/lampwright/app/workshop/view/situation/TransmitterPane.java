package lampwright.app.workshop.view.situation;

import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.situation.InputControl;
import lampwright.app.workshop.model.situation.Transmitter;
import lampwright.app.workshop.words.Texts;

/** The stand-in transmitter: sticks and switches, and what the selected lamp shows, and why. */
final class TransmitterPane extends VBox {
  private static final double STICK_STEP_US = 10;

  private final Texts texts = Texts.of("situations");
  private final Transmitter transmitter;
  private final VBox controls = new VBox();
  private final Button addInput = new Button();

  TransmitterPane(Transmitter transmitter, Runnable addInput) {
    this.transmitter = transmitter;
    getStyleClass().add("transmitter");
    setId("transmitter");
    this.addInput.setText(texts.get("transmitter.addInput"));
    this.addInput.setId("transmitter-add-input");
    this.addInput.getStyleClass().add("small-toggle");
    this.addInput.setOnAction(event -> addInput.run());
    Label title = new Label(texts.get("transmitter"));
    title.getStyleClass().add("form-title");
    Label time = new Label();
    time.setId("transmitter-time");
    time.getStyleClass().add("rung-when");
    HBox head = new HBox(8, title, time);
    head.setAlignment(Pos.BASELINE_LEFT);
    Label trouble = line("transmitter-trouble", "field-trouble");
    Label lamp = line("transmitter-lamp", "form-hint");
    controls.getStyleClass().add("transmitter-controls");
    getChildren().setAll(head, bar(), trouble, controls, lamp);
    transmitter
        .stateProperty()
        .addListener(
            (of, before, now) -> {
              time.setText(
                  now.map(
                          s ->
                              texts.get(
                                  "transmitter.time",
                                  String.format(Locale.ROOT, "%.2f", s.seconds()),
                                  Integer.toString(s.frame())))
                      .orElse(""));
              set(lamp, transmitter.selectedNote().orElse(""));
            });
    transmitter
        .troubleProperty()
        .addListener((of, before, now) -> set(trouble, now.map(t -> "! " + t).orElse("")));
    set(trouble, "");
    set(lamp, "");
    transmitter.controlsProperty().addListener((of, before, now) -> lay());
    lay();
  }

  private static Label line(String id, String style) {
    Label line = new Label();
    line.setId(id);
    line.getStyleClass().add(style);
    line.setWrapText(true);
    line.setMinHeight(USE_PREF_SIZE);
    return line;
  }

  private static void set(Label line, String text) {
    line.setText(text);
    line.setVisible(!text.isEmpty());
    line.setManaged(!text.isEmpty());
  }

  private Node bar() {
    ToggleButton on = new ToggleButton(texts.get("transmitter.on"));
    on.setId("transmitter-on");
    on.getStyleClass().add("small-toggle");
    on.setTooltip(new Tooltip(texts.get("transmitter.on.hint")));
    on.setAccessibleText(texts.get("act.transmitter"));
    on.selectedProperty().bindBidirectional(transmitter.onProperty());
    ToggleButton pause = new ToggleButton(texts.get("transmitter.pause"));
    pause.setId("transmitter-pause");
    pause.getStyleClass().add("small-toggle");
    pause.setOnAction(event -> transmitter.playingProperty().set(!pause.isSelected()));
    Runnable show =
        () ->
            pause.setSelected(
                transmitter.onProperty().get() && !transmitter.playingProperty().get());
    transmitter.playingProperty().addListener((of, before, now) -> show.run());
    transmitter.onProperty().addListener((of, before, now) -> show.run());
    Button step = new Button(texts.get("transmitter.step"));
    step.setId("transmitter-step");
    step.getStyleClass().add("small-toggle");
    step.setTooltip(new Tooltip(texts.get("transmitter.step.hint")));
    step.setOnAction(
        event -> {
          transmitter.playingProperty().set(false);
          transmitter.step(1);
        });
    Button centre = new Button(texts.get("transmitter.centre"));
    centre.setId("transmitter-centre");
    centre.getStyleClass().add("small-toggle");
    centre.setOnAction(event -> transmitter.centre());
    pause.disableProperty().bind(transmitter.onProperty().not());
    step.disableProperty().bind(transmitter.onProperty().not());
    ToggleButton full = new ToggleButton(texts.get("transmitter.full"));
    full.setId("transmitter-full");
    full.getStyleClass().add("small-toggle");
    full.setTooltip(new Tooltip(texts.get("transmitter.full.hint")));
    full.setOnAction(
        event -> {
          transmitter.setFull(full.isSelected());
          full.setSelected(transmitter.fullProperty().get());
        });
    transmitter.fullProperty().addListener((of, before, now) -> full.setSelected(now));
    full.disableProperty().bind(transmitter.onProperty().not());
    return new FlowPane(4, 4, on, pause, step, centre, full);
  }

  private void lay() {
    controls.getChildren().clear();
    for (InputControl control : transmitter.controlsProperty().get()) {
      controls.getChildren().add(control.stick() ? stick(control) : contact(control));
    }
    if (controls.getChildren().isEmpty()) {
      Label none = new Label(texts.get("transmitter.none"));
      none.setWrapText(true);
      none.getStyleClass().add("form-hint");
      controls.getChildren().setAll(none, addInput);
    }
  }

  private Node stick(InputControl control) {
    String id = control.input().id();
    Label name = new Label(id);
    name.getStyleClass().add("rung-name");
    Label width = new Label();
    width
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    texts.get(
                        "transmitter.width", Integer.toString(control.widthUsProperty().get())),
                control.widthUsProperty()));
    HBox gap = new HBox();
    HBox.setHgrow(gap, Priority.ALWAYS);
    CheckBox lost = new CheckBox(texts.get("transmitter.lost"));
    lost.setId("lost-" + id);
    lost.setAccessibleText(texts.get("transmitter.lost.hint", id));
    lost.selectedProperty().bindBidirectional(control.lostProperty());
    HBox head = new HBox(8, name, width, gap, lost);
    head.setAlignment(Pos.CENTER_LEFT);
    Slider stick =
        new Slider(InputControl.LEAST_US, InputControl.GREATEST_US, InputControl.CENTRE_US);
    stick.setId("stick-" + id);
    stick.setAccessibleText(texts.get("transmitter.stick", id));
    stick.setBlockIncrement(STICK_STEP_US);
    stick.setMajorTickUnit(InputControl.GREATEST_US - InputControl.CENTRE_US);
    stick.setMinorTickCount(0);
    stick.valueProperty().bindBidirectional(control.widthUsProperty());
    stick.disableProperty().bind(control.lostProperty().or(transmitter.replayingProperty()));
    lost.disableProperty().bind(transmitter.replayingProperty());
    return new VBox(head, stick);
  }

  private Node contact(InputControl control) {
    String id = control.input().id();
    ToggleButton contact = new ToggleButton(texts.get("transmitter.switch", id));
    contact.setId("switch-" + id);
    contact.getStyleClass().add("small-toggle");
    contact.setMnemonicParsing(false);
    contact.disableProperty().bind(transmitter.replayingProperty());
    contact.selectedProperty().bindBidirectional(control.onProperty());
    return contact;
  }
}
