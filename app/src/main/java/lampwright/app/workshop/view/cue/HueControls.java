package lampwright.app.workshop.view.cue;

import java.util.List;
import javafx.scene.control.Slider;
import lampwright.engine.light.Colour;

/** The controls of a colour by hue and saturation. */
final class HueControls {
  private HueControls() {}

  static ColourControls of(ColourSliders sliders) {
    Slider degrees = sliders.slider("hue.degrees", 0, 360);
    Slider saturation = sliders.slider("hue.saturation", 0, 1);
    Runnable mixed =
        () ->
            sliders.set(
                new Colour.Hue(
                    ColourSliders.rounded(degrees, 1), ColourSliders.rounded(saturation, 100)));
    degrees.valueProperty().addListener((of, before, now) -> mixed.run());
    saturation.valueProperty().addListener((of, before, now) -> mixed.run());
    return new ColourControls(
        List.of(sliders.row("hue.degrees", degrees), sliders.row("hue.saturation", saturation)),
        colour -> {
          if (colour instanceof Colour.Hue h) {
            degrees.setValue(h.degrees());
            saturation.setValue(h.saturation());
          }
        });
  }
}
