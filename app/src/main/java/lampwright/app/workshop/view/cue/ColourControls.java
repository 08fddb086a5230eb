package lampwright.app.workshop.view.cue;

import java.util.List;
import java.util.function.Consumer;
import javafx.scene.Node;
import lampwright.engine.light.Colour;

/**
 * The controls of one form of colour.
 *
 * @param nodes from the topmost
 * @param show shows a colour by them; one of another form changes nothing
 */
record ColourControls(List<Node> nodes, Consumer<Colour> show) {
  static final ColourControls NONE = new ColourControls(List.of(), colour -> {});

  ColourControls {
    nodes = List.copyOf(nodes);
  }
}
