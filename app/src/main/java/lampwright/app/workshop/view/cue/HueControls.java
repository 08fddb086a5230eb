package lampwright.app.workshop.view.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Slider;
import lampwright.app.workshop.model.cue.ColourReach;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.engine.light.Colour;

/** The controls of a colour by hue and saturation. */
final class HueControls {
  private HueControls() {}

  static ColourControls of(ColourSliders sliders, Optional<PixelLook> look) {
    Slider degrees = sliders.slider("hue.degrees", 0, ColourSliders.FULL_CIRCLE);
    Slider saturation = sliders.slider("hue.saturation", 0, 1);
    Runnable mixed =
        () ->
            sliders.set(
                new Colour.Hue(
                    ColourSliders.rounded(degrees, 1), ColourSliders.rounded(saturation, 100)));
    degrees.valueProperty().addListener((of, before, now) -> mixed.run());
    saturation.valueProperty().addListener((of, before, now) -> mixed.run());
    Optional<ReachField> field =
        look.filter(PixelLook::mixes)
            .map(l -> new ReachField(ColourReach.of(l), sliders, colour -> colour));
    List<Node> nodes = new ArrayList<>();
    field.ifPresent(f -> nodes.add(f.node()));
    nodes.add(sliders.row("hue.degrees", degrees));
    nodes.add(sliders.row("hue.saturation", saturation));
    return new ColourControls(
        nodes,
        colour -> {
          field.ifPresent(f -> f.show(colour));
          if (colour instanceof Colour.Hue h) {
            degrees.setValue(h.degrees());
            saturation.setValue(h.saturation());
          }
        });
  }
}
