package lampwright.app.workshop.view.live;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import lampwright.app.live.Baud;
import lampwright.app.live.BenchBrightness;
import lampwright.app.live.LinkState;
import lampwright.app.live.LinkWords;
import lampwright.app.live.PortInfo;
import lampwright.app.workshop.model.live.BenchLink;
import lampwright.app.workshop.view.Theme;
import lampwright.app.workshop.words.Texts;
import org.jspecify.annotations.Nullable;

/** The port of the bench link, its rate and brightness, and how the link is. */
final class ConnectionPane extends VBox {
  private static final double STEP_PERCENT = 5;
  private static final double PORT_EM = 13;

  private final Texts texts = Texts.of("live");
  private final BenchLink link;
  private final GridPane fields = new GridPane(8, 6);
  private final ComboBox<String> port = new ComboBox<>();
  private final Button connect = new Button();
  private final Label state = Lines.of("link-state", "link-state");
  private final Label held = Lines.of("link-held", "field-trouble");
  private final Label rate = Lines.of("link-rate", "form-hint");

  ConnectionPane(BenchLink link) {
    this.link = link;
    getStyleClass().add("link-pane");
    Label title = new Label(texts.get("title"));
    title.getStyleClass().add("form-title");
    add("port", port(), port);
    Node baud = baud();
    add("baud", baud, baud);
    Slider slider = slider();
    add("brightness", brightness(slider), slider);
    CheckBox selected = new CheckBox(texts.get("selectedOnly"));
    selected.setId("link-selected-only");
    selected.setTooltip(new Tooltip(texts.get("selectedOnly.hint")));
    selected.selectedProperty().bindBidirectional(link.selectedOnlyProperty());
    connect.setId("link-connect");
    connect.setOnAction(event -> link.toggle());
    getChildren().setAll(title, fields, row(connect, selected), state, held, rate);
    link.stateProperty().addListener((of, before, now) -> refresh());
    link.connectedProperty().addListener((of, before, now) -> refresh());
    link.heldProperty().addListener((of, before, now) -> refresh());
    link.portProperty().addListener((of, before, now) -> refresh());
    link.gaugeProperty().addListener((of, before, now) -> Lines.show(rate, link.rateWords()));
    refresh();
    Lines.show(rate, link.rateWords());
    link.findPorts();
  }

  private void add(String key, Node field, Node focus) {
    Label label = new Label(texts.get(key));
    label.setLabelFor(focus);
    label.setMinWidth(USE_PREF_SIZE);
    fields.addRow(fields.getRowCount(), label, field);
  }

  // A port may be typed: systems have names that no list has.
  private Node port() {
    port.setId("link-port");
    port.setEditable(true);
    port.setAccessibleText(texts.get("port"));
    port.setCellFactory(view -> new PortCell());
    // What the list has in it is wider, and would push the button aside.
    port.setPrefWidth(PORT_EM * Theme.LEAST_SIZE);
    port.getEditor().setAccessibleText(texts.get("port"));
    port.getEditor()
        .textProperty()
        .addListener(
            (of, before, now) ->
                link.portProperty().set(Optional.of(now.strip()).filter(name -> !name.isEmpty())));
    link.portsProperty().addListener((of, before, now) -> list(now));
    link.portProperty()
        .addListener(
            (of, before, now) -> {
              if (!port.getEditor().getText().strip().equals(now.orElse(""))) {
                port.getEditor().setText(now.orElse(""));
              }
            });
    port.getEditor().setText(link.portProperty().get().orElse(""));
    Button find = new Button(texts.get("find"));
    find.setId("link-find");
    find.getStyleClass().add("small-toggle");
    find.setTooltip(new Tooltip(texts.get("find.hint")));
    find.setMinWidth(USE_PREF_SIZE);
    find.setOnAction(event -> link.findPorts());
    return row(port, find);
  }

  private void list(List<PortInfo> ports) {
    String typed = port.getEditor().getText();
    port.getItems().setAll(ports.stream().map(PortInfo::name).toList());
    port.getEditor().setText(link.portProperty().get().orElse(typed));
  }

  private final class PortCell extends ListCell<String> {
    @Override
    protected void updateItem(@Nullable String name, boolean empty) {
      super.updateItem(name, empty);
      setText(
          empty || name == null
              ? null
              : link.portsProperty().get().stream()
                  .filter(one -> one.name().equals(name))
                  .findFirst()
                  .map(LinkWords::of)
                  .orElse(name));
    }
  }

  private Node baud() {
    ComboBox<Baud> box = new ComboBox<>();
    box.setId("link-baud");
    box.getItems().setAll(Baud.values());
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(@Nullable Baud baud) {
            return baud == null ? "" : texts.get("baud.value", Integer.toString(baud.rate()));
          }

          @Override
          public @Nullable Baud fromString(String text) {
            return null;
          }
        });
    box.valueProperty().bindBidirectional(link.baudProperty());
    box.disableProperty().bind(link.connectedProperty());
    return box;
  }

  private Slider slider() {
    Slider slider = new Slider(BenchBrightness.LEAST, BenchBrightness.GREATEST, 0);
    slider.setId("link-brightness");
    slider.setBlockIncrement(STEP_PERCENT);
    slider.setAccessibleText(texts.get("brightness.accessible"));
    slider.valueProperty().bindBidirectional(link.brightnessProperty());
    return slider;
  }

  private Node brightness(Slider slider) {
    Label percent = new Label();
    percent.textProperty().bind(link.brightnessProperty().asString().concat("\u00a0%"));
    percent.setMinWidth(USE_PREF_SIZE);
    return row(slider, percent);
  }

  private static Node row(Node... nodes) {
    HBox row = new HBox(8, nodes);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  private void refresh() {
    boolean on = link.connectedProperty().get();
    LinkState now = link.stateProperty().get();
    connect.setText(texts.get(on ? "disconnect" : "connect"));
    connect.setDisable(!on && link.portProperty().get().isEmpty());
    connect.setAccessibleHelp(LinkWords.of(now));
    port.setDisable(on);
    boolean trouble = now instanceof LinkState.Failed || now instanceof LinkState.Lost;
    Lines.show(state, (trouble ? "! " : "") + LinkWords.of(now));
    Lines.show(held, link.heldProperty().get() ? "! " + texts.get("held") : "");
  }
}
