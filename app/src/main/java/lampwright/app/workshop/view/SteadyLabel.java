package lampwright.app.workshop.view;

import javafx.scene.control.Label;

/**
 * A label whose text changes often. Where another text takes as much room as the one before it
 * nothing around it is laid out anew: that would go up to the window, with every frame that plays.
 */
public class SteadyLabel extends Label {
  @Override
  public void requestLayout() {
    if (getSkin() != null && getWidth() > 0 && fits()) {
      setNeedsLayout(true);
    } else {
      super.requestLayout();
    }
  }

  private boolean fits() {
    return snapSizeX(computePrefWidth(USE_COMPUTED_SIZE)) == getWidth()
        && snapSizeY(computePrefHeight(USE_COMPUTED_SIZE)) == getHeight();
  }
}
