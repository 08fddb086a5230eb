package lampwright.app.workshop.view;

import java.util.Optional;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.words.Texts;

/**
 * Words on what is under the pointer and, a little later, why the pixel there shows what it shows.
 */
public final class PixelTip {
  /**
   * What is under the pointer.
   *
   * @param words empty for none
   * @param spot the pixel there
   */
  public record Pointed(String words, Optional<PixelExplainer.Spot> spot) {
    /** Something that is no pixel. */
    public Pointed(String words) {
      this(words, Optional.empty());
    }
  }

  private static final Pointed NOTHING = new Pointed("");
  private static final double WIDTH = 520;

  private final Texts texts = Texts.of("scene");
  private final Node node;
  private final PixelExplainer explainer;
  private final Tooltip tooltip = new Tooltip();
  private Pointed pointed = NOTHING;

  private PixelTip(Node node, PixelExplainer explainer) {
    this.node = node;
    this.explainer = explainer;
    tooltip.setWrapText(true);
    tooltip.setMaxWidth(WIDTH);
  }

  /** Shows words on a node, by where the pointer is on it. */
  public static void install(
      Node node, PixelExplainer explainer, Function<MouseEvent, Pointed> at) {
    PixelTip tip = new PixelTip(node, explainer);
    node.addEventHandler(MouseEvent.MOUSE_MOVED, event -> tip.point(at.apply(event)));
    // Something else is under the pointer then, though it has not moved.
    node.addEventFilter(ScrollEvent.SCROLL, event -> tip.point(NOTHING));
    explainer.explainedProperty().addListener((of, before, now) -> tip.explained(now));
  }

  private void point(Pointed now) {
    pointed = now;
    now.spot().ifPresent(explainer::request);
    String words = withWhy(explainer.explainedProperty().get());
    if (!words.equals(tooltip.getText())) {
      tooltip.hide();
      tooltip.setText(words);
      if (words.isEmpty()) {
        Tooltip.uninstall(node, tooltip);
      } else {
        Tooltip.install(node, tooltip);
      }
    }
  }

  private void explained(Optional<PixelExplainer.Explained> found) {
    if (found.map(PixelExplainer.Explained::spot).filter(this::isPointed).isPresent()) {
      tooltip.setText(withWhy(found));
      Tooltip.install(node, tooltip);
    }
  }

  private boolean isPointed(PixelExplainer.Spot spot) {
    return pointed.spot().equals(Optional.of(spot));
  }

  private String withWhy(Optional<PixelExplainer.Explained> found) {
    String words = pointed.words();
    return found
        .filter(about -> isPointed(about.spot()))
        .map(
            about -> words.isEmpty() ? about.words() : texts.get("why.below", words, about.words()))
        .orElse(words);
  }
}
