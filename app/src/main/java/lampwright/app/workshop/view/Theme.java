package lampwright.app.workshop.view;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.List;
import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.text.Font;

/** The look: a palette by day or by night, and the stylesheets of all parts. */
public final class Theme {
  private static final List<String> PARTS =
      List.of("workshop", "ribbons", "forms", "drawing", "rig", "problems", "export");

  private Theme() {}

  /** Gives a window the stylesheets of all parts. */
  public static void dress(Scene scene, boolean dark) {
    PARTS.forEach(part -> scene.getStylesheets().add(Stylesheets.url(part)));
    // The theme has a size of its own; people have set one for all programs.
    scene.getRoot().setStyle("-fx-font-size: " + Font.getDefault().getSize() + "px;");
    light(scene, dark);
  }

  /** Changes between the dark and the light palette. */
  public static void light(Scene scene, boolean dark) {
    Application.setUserAgentStylesheet(
        dark
            ? new PrimerDark().getUserAgentStylesheet()
            : new PrimerLight().getUserAgentStylesheet());
    String night = Stylesheets.url("dark");
    scene.getStylesheets().remove(night);
    if (dark) {
      scene.getStylesheets().add(night);
    }
  }
}
