package lampwright.app.workshop.view.cue;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;
import lampwright.engine.light.MatchedMix;

/**
 * Shows what colour is requested, what the lamp's own emitters make of it, and how near they come.
 */
final class Swatches {
  private final Texts texts = Texts.of("cue");
  private final Supplier<Optional<PixelLook>> look;
  private final Rectangle requested = new Rectangle(22, 22);
  private final Rectangle achievable = new Rectangle(22, 22);
  private final Label verdict = new Label();

  Swatches(Supplier<Optional<PixelLook>> look) {
    this.look = look;
    requested.getStyleClass().add("swatch");
    achievable.getStyleClass().add("swatch");
    verdict.getStyleClass().add("field-range");
    verdict.setWrapText(true);
  }

  /** The two swatches and their names, from left to right. */
  List<Node> line() {
    return List.of(requested, name("swatch.requested"), achievable, name("swatch.achievable"));
  }

  private Label name(String key) {
    Label name = new Label(texts.get(key));
    name.getStyleClass().add("field-range");
    return name;
  }

  Label verdict() {
    return verdict;
  }

  void show(Colour colour) {
    requested.setFill(paint(PixelLook.requested(colour)));
    Optional<PixelLook> lamp = look.get();
    achievable.setFill(lamp.map(l -> paint(l.argb(colour))).orElse(Color.TRANSPARENT));
    Optional<MatchedMix> mix = lamp.flatMap(l -> l.explain(colour));
    verdict.setText(
        mix.filter(m -> !m.reachesTarget()).map(m -> texts.get("reach.nearest")).orElse(""));
    verdict.setManaged(!verdict.getText().isEmpty());
  }

  /** The paint of an opaque ARGB colour. */
  static Color paint(int argb) {
    return Color.rgb(argb >> 16 & 0xFF, argb >> 8 & 0xFF, argb & 0xFF);
  }
}
