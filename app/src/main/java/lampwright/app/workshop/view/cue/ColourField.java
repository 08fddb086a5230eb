package lampwright.app.workshop.view.cue;

import java.util.Optional;
import java.util.function.Supplier;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.cue.PixelLook;
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
  private final Supplier<Optional<PixelLook>> look;
  private final ComboBox<ColourForm> forms = new ComboBox<>();
  private final Swatches swatches;
  private final ColourSliders sliders;
  private final VBox parts = new VBox(4);
  private @Nullable ColourForm shown;
  private ColourControls controls = ColourControls.NONE;

  private ColourField(Slot<Colour> slot, Supplier<Optional<PixelLook>> look) {
    this.slot = slot;
    this.look = look;
    this.swatches = new Swatches(look);
    this.sliders = new ColourSliders(slot);
  }

  static Field of(Slot<Colour> slot, Supplier<Optional<PixelLook>> look, String name) {
    return new ColourField(slot, look).field(name);
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
    slot.valueProperty().addListener((of, before, now) -> show());
    show();
    return new Field(new VBox(4, line, parts, swatches.verdict()), forms);
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
      case SRGB -> SrgbControls.of(slot, sliders);
      case HUE -> HueControls.of(sliders);
      case KELVIN -> KelvinControls.of(slot, sliders, look.get());
      case SIGNAL -> SignalControls.of(slot, sliders);
      case DRIVE -> DriveControls.of(sliders);
    };
  }
}
