package lampwright.app.workshop.view.cue;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.view.form.Field;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import org.jspecify.annotations.Nullable;

/**
 * A colour in one of its forms. Two swatches stand beside it: what is requested, and what the
 * lamp's own emitters make of it.
 */
final class ColourField {
  private final Texts texts = Texts.of("cue");
  private final Slot<Colour> slot;
  private final ColourContext context;
  private final PaletteRow palette;
  private final ComboBox<ColourForm> forms = new ComboBox<>();
  private final Swatches swatches;
  private final ColourSliders sliders;
  private final VBox parts = new VBox(4);
  private @Nullable ColourForm shown;
  private ColourControls controls = ColourControls.NONE;

  private ColourField(Slot<Colour> slot, ColourContext context) {
    this.slot = slot;
    this.context = context;
    this.swatches = new Swatches(context.look());
    this.palette = new PaletteRow(slot, context.look());
    this.sliders = new ColourSliders(slot);
  }

  static Field of(Slot<Colour> slot, ColourContext context, String name) {
    return new ColourField(slot, context).field(name);
  }

  private Field field(String name) {
    forms.getItems().setAll(ColourForm.values());
    forms.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(@Nullable ColourForm form) {
            return form == null ? "" : texts.get("form." + form.name());
          }

          @Override
          public @Nullable ColourForm fromString(String text) {
            return null;
          }
        });
    forms.setAccessibleText(texts.get("form.accessible", name));
    HBox line = new HBox(6, forms);
    line.getChildren().addAll(swatches.line());
    line.setAlignment(Pos.CENTER_LEFT);
    forms.setOnAction(
        event -> {
          ColourForm form = forms.getValue();
          if (form != null && form != ColourForm.of(slot.value())) {
            slot.set(form.turned(slot.value()));
          }
        });
    line.getChildren().add(dropper(name));
    slot.valueProperty().addListener((of, before, now) -> show());
    show();
    VBox box = new VBox(4, line, parts, palette.node(), swatches.verdict());
    // Weakly, since the context outlives the form.
    ChangeListener<List<Colour>> used = (of, before, now) -> palette.show(now);
    box.setUserData(used);
    context.used().addListener(new WeakChangeListener<>(used));
    palette.show(context.used().getValue());
    return new Field(box, forms);
  }

  private ToggleButton dropper(String name) {
    ToggleButton button = new ToggleButton(texts.get("dropper"));
    button.setAccessibleText(texts.get("dropper.accessible", name));
    button.setTooltip(new Tooltip(texts.get("dropper.hint")));
    button.getStyleClass().add("colour-dropper");
    Consumer<Colour> take = slot::set;
    button.setOnAction(
        event -> {
          if (button.isSelected()) {
            context.dropper().start(take);
          } else {
            context.dropper().cancel();
          }
        });
    button.addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE && button.isSelected()) {
            context.dropper().cancel();
            event.consume();
          }
        });
    ChangeListener<Optional<Consumer<Colour>>> waits =
        (of, before, now) -> button.setSelected(now.equals(Optional.of(take)));
    button.setUserData(waits);
    context.dropper().takerProperty().addListener(new WeakChangeListener<>(waits));
    return button;
  }

  private void show() {
    sliders.showing(
        () -> {
          ColourForm form = ColourForm.of(slot.value());
          forms.setValue(form);
          if (form != shown) {
            shown = form;
            controls = controls(form);
            parts.getChildren().setAll(controls.nodes());
          }
          controls.show().accept(slot.value());
        });
    swatches.show(slot.value());
  }

  private ColourControls controls(ColourForm form) {
    return switch (form) {
      case SRGB -> SrgbControls.of(slot, sliders, context.look().get());
      case HUE -> HueControls.of(sliders, context.look().get());
      case KELVIN -> KelvinControls.of(slot, sliders, context.look().get());
      case SIGNAL -> SignalControls.of(slot, sliders);
      case DRIVE -> DriveControls.of(sliders);
    };
  }
}
