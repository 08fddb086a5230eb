package lampwright.app.workshop.view.cue;

import java.util.List;
import javafx.scene.control.ComboBox;
import javafx.util.StringConverter;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
import org.jspecify.annotations.Nullable;

/** The control of a signal colour: a list of their names. */
final class SignalControls {
  private SignalControls() {}

  static ColourControls of(Slot<Colour> slot, ColourSliders sliders) {
    Texts texts = Texts.of("cue");
    ComboBox<SignalColour> box = new ComboBox<>();
    box.getItems().setAll(SignalColour.values());
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(@Nullable SignalColour colour) {
            return colour == null ? "" : texts.get("signal." + colour.key());
          }

          @Override
          public @Nullable SignalColour fromString(String text) {
            return null;
          }
        });
    box.setAccessibleText(texts.get("form.SIGNAL"));
    box.setOnAction(
        event -> {
          SignalColour chosen = box.getValue();
          if (chosen != null && !sliders.shows()) {
            slot.set(new Colour.Signal(chosen));
          }
        });
    return new ColourControls(
        List.of(box),
        colour -> {
          if (colour instanceof Colour.Signal s) {
            box.setValue(s.colour());
          }
        });
  }
}
