package lampwright.app.workshop.view.start;

import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;

/** What cards of the start sheet share: a face in place of their words, which are still spoken. */
final class Card {
  private static final double EDGES = 12;

  private Card() {}

  /** Gives a card its face, as wide as the card is. */
  static void face(ButtonBase card, Region face) {
    card.setMnemonicParsing(false);
    card.setMaxWidth(Double.MAX_VALUE);
    card.setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
    card.getStyleClass().add("start-card");
    face.setMouseTransparent(true);
    face.setMinWidth(0);
    face.prefWidthProperty().bind(card.widthProperty().subtract(EDGES));
    face.maxWidthProperty().bind(face.prefWidthProperty());
    card.setGraphic(face);
  }

  /** Keeps a picture as wide as its card, and as high as that makes it. */
  static void fill(ButtonBase card, LitPicture picture, double aspect) {
    card.widthProperty()
        .addListener(
            (of, before, now) -> {
              double width = Math.max(1, now.doubleValue() - EDGES);
              picture.size(width, Math.rint(width / aspect));
            });
  }

  static Label name(String words) {
    return label(words, "start-name");
  }

  static Label soft(String words) {
    return label(words, "start-soft");
  }

  private static Label label(String words, String style) {
    Label label = new Label(words);
    label.setMinWidth(0);
    label.getStyleClass().add(style);
    return label;
  }

  /** A label that takes more lines rather than being cut. */
  static Node wrapped(Label label) {
    label.setWrapText(true);
    return label;
  }
}
