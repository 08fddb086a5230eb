package lampwright.app.workshop.view.cue;

import java.util.List;
import java.util.Locale;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.view.form.Entered;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;

/** The controls of an sRGB colour: its code, and a slider for each part. */
final class SrgbControls {
  private SrgbControls() {}

  static ColourControls of(Slot<Colour> slot, ColourSliders sliders) {
    TextField hex = new TextField();
    hex.setPrefColumnCount(8);
    hex.setAccessibleText(Texts.of("cue").get("srgb.hex"));
    Slider red = sliders.slider("srgb.red", 0, 255);
    Slider green = sliders.slider("srgb.green", 0, 255);
    Slider blue = sliders.slider("srgb.blue", 0, 255);
    Runnable mixed =
        () ->
            sliders.set(
                new Colour.Srgb(
                    (int) Math.round(red.getValue()),
                    (int) Math.round(green.getValue()),
                    (int) Math.round(blue.getValue())));
    List.of(red, green, blue)
        .forEach(s -> s.valueProperty().addListener((of, before, now) -> mixed.run()));
    Entered.listen(hex, () -> typed(hex, slot));
    return new ColourControls(
        List.of(
            hex,
            sliders.row("srgb.red", red),
            sliders.row("srgb.green", green),
            sliders.row("srgb.blue", blue)),
        colour -> {
          if (colour instanceof Colour.Srgb c) {
            hex.setText(hex(c));
            red.setValue(c.red());
            green.setValue(c.green());
            blue.setValue(c.blue());
          }
        });
  }

  private static void typed(TextField field, Slot<Colour> slot) {
    String text = field.getText().strip();
    String digits = text.startsWith("#") ? text.substring(1) : text;
    if (digits.matches("[0-9a-fA-F]{6}")) {
      int code = Integer.parseInt(digits, 16);
      Colour typed = new Colour.Srgb(code >> 16, code >> 8 & 0xFF, code & 0xFF);
      if (!typed.equals(slot.value())) {
        slot.set(typed);
      }
    } else if (slot.value() instanceof Colour.Srgb c) {
      field.setText(hex(c));
    }
  }

  private static String hex(Colour.Srgb c) {
    return String.format(Locale.ROOT, "#%02X%02X%02X", c.red(), c.green(), c.blue());
  }
}
