package lampwright.app.workshop.view.rig;

import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.layout.Pane;
import lampwright.app.workshop.view.Theme;

/** Two nodes: side by side where there is room for both, else the second below the first. */
final class FormAndWiring extends Pane {
  /** The least width at which both are side by side, in lines of text. */
  private static final double BOTH = 58;

  private static final double FORM = 0.52;
  private static final double GAP = 12;

  private final Node form;
  private final Node wiring;

  FormAndWiring(Node form, Node wiring) {
    this.form = form;
    this.wiring = wiring;
    getChildren().setAll(form, wiring);
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  private static boolean beside(double width) {
    return width >= BOTH * Theme.LEAST_SIZE;
  }

  private static double formWidth(double width) {
    return beside(width) ? Math.floor(width * FORM) : width;
  }

  private static double wiringWidth(double width) {
    return beside(width) ? width - formWidth(width) - GAP : width;
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected double computePrefHeight(double width) {
    double wide = width > 0 ? width : getWidth();
    double above = form.prefHeight(formWidth(wide));
    double below = wiring.prefHeight(wiringWidth(wide));
    return beside(wide) ? Math.max(above, below) : above + GAP + below;
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double left = formWidth(width);
    double above = form.prefHeight(left);
    double right = wiringWidth(width);
    form.resizeRelocate(0, 0, left, above);
    if (beside(width)) {
      wiring.resizeRelocate(left + GAP, 0, right, wiring.prefHeight(right));
    } else {
      wiring.resizeRelocate(0, above + GAP, right, wiring.prefHeight(right));
    }
  }
}
