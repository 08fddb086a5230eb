package lampwright.app.workshop.view.cue;

import java.util.List;
import javafx.scene.control.Slider;
import lampwright.engine.light.Colour;

/** The controls of a colour given by its drives. */
final class DriveControls {
  private static final int PARTS = 1000;

  private DriveControls() {}

  static ColourControls of(ColourSliders sliders) {
    Slider r = sliders.slider("drive.r", 0, 1);
    Slider g = sliders.slider("drive.g", 0, 1);
    Slider b = sliders.slider("drive.b", 0, 1);
    Slider w = sliders.slider("drive.w", 0, 1);
    Runnable mixed =
        () ->
            sliders.set(
                new Colour.Drive(
                    ColourSliders.rounded(r, PARTS),
                    ColourSliders.rounded(g, PARTS),
                    ColourSliders.rounded(b, PARTS),
                    ColourSliders.rounded(w, PARTS)));
    List.of(r, g, b, w)
        .forEach(s -> s.valueProperty().addListener((of, before, now) -> mixed.run()));
    return new ColourControls(
        List.of(
            sliders.row("drive.r", r),
            sliders.row("drive.g", g),
            sliders.row("drive.b", b),
            sliders.row("drive.w", w)),
        colour -> {
          if (colour instanceof Colour.Drive d) {
            r.setValue(d.r());
            g.setValue(d.g());
            b.setValue(d.b());
            w.setValue(d.w());
          }
        });
  }
}
