package lampwright.app.workshop.view.shelf;

import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import lampwright.app.workshop.model.shelf.ShelfEntry;
import lampwright.app.workshop.model.shelf.ShelfLight;
import lampwright.app.workshop.model.shelf.ShelfModel;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.meter.FlashCaution;

/** A pattern or preset on the shelf: its strip and, beside a small one, its name. */
final class EntryView extends HBox {
  private static final PseudoClass SELECTED = PseudoClass.getPseudoClass("chosen");
  private static final double WIDE = 240;
  private static final double SMALL = 40;
  private static final double NAME = 96;

  private final Texts texts = Texts.of("shelf");
  private final ShelfEntry entry;
  private final boolean wide;
  private final StripView strip;
  private final Region notch = new Region();
  private final Tooltip tooltip = new Tooltip();

  EntryView(ShelfEntry entry) {
    this.entry = entry;
    this.wide = entry.source() == ShelfEntry.Source.PATTERN;
    this.strip = new StripView(wide, wide ? WIDE : SMALL, wide ? 30 : 18);
    getStyleClass().add("shelf-entry");
    setAlignment(Pos.CENTER_LEFT);
    setSpacing(6);
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.BUTTON);
    notch.getStyleClass().add("shelf-notch");
    notch.setVisible(false);
    getChildren().addAll(notch, strip);
    if (wide) {
      HBox.setHgrow(strip, Priority.ALWAYS);
    } else {
      Label name = new Label(entry.title());
      name.setMinWidth(NAME);
      name.setMaxWidth(NAME);
      name.setPrefWidth(NAME);
      name.setWrapText(true);
      getChildren().add(name);
    }
    Tooltip.install(this, tooltip);
    words(Optional.empty());
  }

  ShelfEntry entry() {
    return entry;
  }

  /** Shows its light, once it is rendered. */
  void show(ShelfModel model) {
    Optional<ShelfLight> light = model.lights().find(entry.pattern());
    strip.show(light);
    words(light);
  }

  void choose(boolean chosen) {
    pseudoClassStateChanged(SELECTED, chosen);
    notch.setVisible(chosen);
    // One of all is reached by Tab, the others from there by arrow keys.
    setFocusTraversable(chosen);
  }

  /** Shows an instant, below 0 none. */
  void frame(int frame) {
    strip.frame(frame);
  }

  boolean wide() {
    return wide;
  }

  private void words(Optional<ShelfLight> light) {
    String kind = Titles.ofKind(entry.pattern().kind());
    String about = texts.get("source." + entry.source(), kind);
    String text = texts.get("entry.accessible", entry.title(), about);
    Optional<FlashCaution> over =
        light.map(ShelfLight::flashes).filter(flashes -> !flashes.passes());
    if (over.isPresent()) {
      int most = Math.max(over.get().general().flashes(), over.get().red().flashes());
      text =
          text
              + "; "
              + texts.get(
                  "strips.dimmed",
                  Integer.toString(most),
                  Integer.toString(FlashCaution.MOST_FLASHES));
    }
    setAccessibleText(text);
    tooltip.setText(texts.get("entry.tooltip", text));
  }
}
