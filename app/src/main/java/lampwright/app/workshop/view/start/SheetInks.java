package lampwright.app.workshop.view.start;

import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.scene.layout.Pane;
import lampwright.app.picture.DrawingInk;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.view.Stylesheets;
import lampwright.app.workshop.view.Theme;

/**
 * The colours that all pictures of the start sheet are drawn with, as by day and as by night. If
 * each picture had its own, half of all there is to be styled before the sheet is in sight would be
 * these.
 */
final class SheetInks extends Pane {
  private final ReadOnlyIntegerWrapper changes = new ReadOnlyIntegerWrapper();
  private final Inks<DrawingInk> day = inks();
  private final Inks<DrawingInk> night = inks();

  SheetInks() {
    setVisible(false);
    setManaged(false);
    getChildren().setAll(ground(day), ground(night));
    night.getParent().getStylesheets().setAll(Stylesheets.url("palette-night"));
  }

  private Inks<DrawingInk> inks() {
    return new Inks<>(DrawingInk.class, () -> changes.set(changes.get() + 1));
  }

  private static Pane ground(Inks<DrawingInk> inks) {
    Pane ground = new Pane(inks);
    ground.getStyleClass().addAll("drawing", Theme.PALETTE);
    return ground;
  }

  Inks<DrawingInk> of(boolean night) {
    return night ? this.night : day;
  }

  /** Is another whenever a colour is. */
  ReadOnlyIntegerProperty changesProperty() {
    return changes.getReadOnlyProperty();
  }
}
