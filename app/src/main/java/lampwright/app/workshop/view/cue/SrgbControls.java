package lampwright.app.workshop.view.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.paint.Color;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.cue.ColourReach;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.view.form.Entered;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;

/** The controls of an sRGB colour: its code, the field of hues, and a slider for each part. */
final class SrgbControls {
  private SrgbControls() {}

  static ColourControls of(Slot<Colour> slot, ColourSliders sliders, Optional<PixelLook> look) {
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
    Optional<ReachField> field =
        look.filter(PixelLook::mixes)
            .map(l -> new ReachField(ColourReach.of(l), sliders, hue -> coded(hue, slot.value())));
    List<Node> nodes = new ArrayList<>();
    nodes.add(hex);
    field.ifPresent(f -> nodes.add(f.node()));
    nodes.add(sliders.row("srgb.red", red));
    nodes.add(sliders.row("srgb.green", green));
    nodes.add(sliders.row("srgb.blue", blue));
    return new ColourControls(
        nodes,
        colour -> {
          if (colour instanceof Colour.Srgb c) {
            field.ifPresent(f -> f.show(hue(c)));
            hex.setText(hex(c));
            red.setValue(c.red());
            green.setValue(c.green());
            blue.setValue(c.blue());
          }
        });
  }

  // In the hexcone, with the greatest code of the colour before; black has none to keep.
  private static Colour coded(Colour picked, Colour before) {
    if (!(picked instanceof Colour.Hue hue)) {
      return picked;
    }
    double greatest = before instanceof Colour.Srgb c ? colour(c).getBrightness() : 1;
    Color made = Color.hsb(hue.degrees(), hue.saturation(), greatest == 0 ? 1 : greatest);
    return new Colour.Srgb(code(made.getRed()), code(made.getGreen()), code(made.getBlue()));
  }

  private static int code(double share) {
    return (int) Math.round(255 * share);
  }

  private static Colour.Hue hue(Colour.Srgb c) {
    return new Colour.Hue(colour(c).getHue(), colour(c).getSaturation());
  }

  private static Color colour(Colour.Srgb c) {
    return Color.rgb(c.red(), c.green(), c.blue());
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
