package lampwright.app.workshop.view;

import atlantafx.base.theme.PrimerLight;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;
import javafx.application.Application;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.text.Font;

/** The look: the typefaces, a palette by day or by night, and the stylesheets of all parts. */
public final class Theme {
  private static final List<String> PARTS =
      List.of(
          "workshop",
          "ribbons",
          "forms",
          "drawing",
          "rig",
          "problems",
          "export",
          "shelf",
          "situations",
          "live",
          "help",
          "start");
  private static final List<String> FONTS =
      List.of(
          "ibm-plex-sans-condensed-400",
          "ibm-plex-sans-condensed-500",
          "ibm-plex-sans-condensed-600",
          "routed-gothic");

  /** The least size of text, px: a condensed face is hard to read below. */
  public static final double LEAST_SIZE = 13;

  /** The style class of what may have a palette of its own; every window's root has one. */
  public static final String PALETTE = "palette";

  private static boolean fonts;

  private Theme() {}

  /** Gives a window the stylesheets of all parts. */
  public static void dress(Scene scene, boolean dark) {
    loadFonts();
    Application.setUserAgentStylesheet(new PrimerLight().getUserAgentStylesheet());
    PARTS.forEach(part -> scene.getStylesheets().add(Stylesheets.url(part)));
    size(scene.getRoot());
    light(scene, dark);
  }

  /** Gives what is to be the root of a window the size of its text. */
  static void size(Parent root) {
    // The theme has a size of its own; people have set one for all programs.
    double size = Math.max(LEAST_SIZE, Font.getDefault().getSize());
    root.setStyle("-fx-font-size: " + size + "px;");
  }

  /** Changes between the dark and the light palette. */
  public static void light(Scene scene, boolean dark) {
    String day = Stylesheets.url("palette-day");
    String night = Stylesheets.url("palette-night");
    scene.getStylesheets().removeAll(day, night);
    scene.getStylesheets().add(0, dark ? night : day);
  }

  private static void loadFonts() {
    if (fonts) {
      return;
    }
    fonts = true;
    for (String name : FONTS) {
      String file = "/lampwright/app/fonts/" + name + ".ttf";
      try (InputStream in = Objects.requireNonNull(Theme.class.getResourceAsStream(file), file)) {
        Font.loadFont(in, LEAST_SIZE);
      } catch (IOException unreadable) {
        throw new UncheckedIOException(unreadable);
      }
    }
  }
}
