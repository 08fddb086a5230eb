package lampwright.app.workshop.view.cue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.shape.Rectangle;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
import lampwright.engine.words.ColourWords;

/**
 * Swatches of the colours that the project uses, and of the signal colours. One is reached by Tab,
 * the others from there by Left and Right.
 */
final class PaletteRow {
  private static final double SIZE = 14;

  private final FlowPane row = new FlowPane(3, 3);
  private final Slot<Colour> slot;
  private final Supplier<Optional<PixelLook>> look;

  PaletteRow(Slot<Colour> slot, Supplier<Optional<PixelLook>> look) {
    this.slot = slot;
    this.look = look;
    row.setPrefWrapLength(220);
    row.setAccessibleText(Texts.of("cue").get("palette"));
    row.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
  }

  FlowPane node() {
    return row;
  }

  /** Shows the colours of a project, then the signal colours. */
  void show(List<Colour> used) {
    Set<Colour> all = new LinkedHashSet<>(used);
    Arrays.stream(SignalColour.values()).map(Colour.Signal::new).forEach(all::add);
    Optional<PixelLook> lamp = look.get();
    List<Button> buttons = new ArrayList<>();
    for (Colour colour : all) {
      Button button = swatch(colour, lamp);
      button.setFocusTraversable(buttons.isEmpty());
      button.setId("palette-" + buttons.size());
      buttons.add(button);
    }
    row.getChildren().setAll(buttons);
  }

  private Button swatch(Colour colour, Optional<PixelLook> lamp) {
    Rectangle square = new Rectangle(SIZE, SIZE);
    square.getStyleClass().add("swatch");
    square.setFill(
        Swatches.paint(lamp.map(l -> l.argb(colour)).orElseGet(() -> PixelLook.requested(colour))));
    Button button = new Button();
    button.setGraphic(square);
    button.getStyleClass().add("palette-swatch");
    String words = ColourWords.of(colour);
    button.setAccessibleText(words);
    button.setTooltip(new Tooltip(words));
    button.setOnAction(event -> slot.set(colour));
    return button;
  }

  private void key(KeyEvent event) {
    int by = event.getCode() == KeyCode.RIGHT ? 1 : event.getCode() == KeyCode.LEFT ? -1 : 0;
    List<Node> all = row.getChildren();
    for (int i = 0; by != 0 && i < all.size(); i++) {
      if (all.get(i).isFocused()) {
        int next = i + by;
        if (next >= 0 && next < all.size()) {
          all.forEach(node -> node.setFocusTraversable(false));
          all.get(next).setFocusTraversable(true);
          all.get(next).requestFocus();
        }
        event.consume();
        return;
      }
    }
  }
}
