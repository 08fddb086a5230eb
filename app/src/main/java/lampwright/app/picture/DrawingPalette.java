package lampwright.app.picture;

import java.awt.Color;
import java.awt.LinearGradientPaint;
import java.awt.MultipleGradientPaint.ColorSpaceType;
import java.awt.MultipleGradientPaint.CycleMethod;
import java.awt.Paint;
import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.exporters.picture.Ink;

/**
 * The colours of models by day or by night. They are those of the window, read from its style
 * sheets.
 */
public final class DrawingPalette implements RasterPainter.Paints {
  private static final String SHEETS = "/lampwright/app/workshop/";
  private static final Pattern COLOUR =
      Pattern.compile(
          "-lw-([a-z-]+): (?:#([0-9a-f]{6})|rgba\\((\\d+), (\\d+), (\\d+), ([0-9.]+)\\));");
  private static final Pattern INK =
      Pattern.compile("\\.drawing \\.ink-([a-z-]+) \\{ -fx-background-color: ([^;]+); }");
  private static final Pattern NAME = Pattern.compile("-lw-([a-z-]+)");
  private static final String GRADIENT = "linear-gradient(to bottom right, ";

  private final Map<String, Color> colours = new HashMap<>();
  private final Map<String, String> inks = new HashMap<>();

  private DrawingPalette(String palette) {
    Matcher colour = COLOUR.matcher(sheet(palette));
    while (colour.find()) {
      colours.put(
          colour.group(1),
          colour.group(2) != null
              ? Color.decode("#" + colour.group(2))
              : new Color(
                  Integer.parseInt(colour.group(3)),
                  Integer.parseInt(colour.group(4)),
                  Integer.parseInt(colour.group(5)),
                  Math.round(Float.parseFloat(colour.group(6)) * 255)));
    }
    Matcher ink = INK.matcher(sheet("drawing"));
    while (ink.find()) {
      inks.put(ink.group(1), ink.group(2));
    }
  }

  public static DrawingPalette day() {
    return new DrawingPalette("palette-day");
  }

  public static DrawingPalette night() {
    return new DrawingPalette("palette-night");
  }

  /**
   * {@inheritDoc}
   *
   * @throws IllegalArgumentException if the style sheets have no such ink
   */
  @Override
  public Paint of(Ink ink, Rectangle2D area) {
    String value = value(ink);
    Matcher names = NAME.matcher(value);
    Color first = next(names, value);
    return value.startsWith(GRADIENT) ? gradient(first, next(names, value), area) : first;
  }

  /**
   * The colour of an ink that is the same everywhere.
   *
   * @throws IllegalArgumentException if the style sheets have no such ink
   */
  public Color colour(Ink ink) {
    String value = value(ink);
    return next(NAME.matcher(value), value);
  }

  private String value(Ink ink) {
    String name = ink.name().toLowerCase(Locale.ROOT).replace('_', '-');
    String value = inks.get(name);
    if (value == null) {
      throw new IllegalArgumentException(name + ": the style sheets have no such ink");
    }
    return value;
  }

  private Color next(Matcher names, String value) {
    Color colour = names.find() ? colours.get(names.group(1)) : null;
    if (colour == null) {
      throw new IllegalArgumentException(value + ": the palette has no such colour");
    }
    return colour;
  }

  private static Paint gradient(Color from, Color to, Rectangle2D area) {
    if (area.isEmpty()) {
      return from;
    }
    AffineTransform place = AffineTransform.getTranslateInstance(area.getX(), area.getY());
    place.scale(area.getWidth(), area.getHeight());
    return new LinearGradientPaint(
        new Point2D.Double(0, 0),
        new Point2D.Double(1, 1),
        new float[] {0, 1},
        new Color[] {from, to},
        CycleMethod.NO_CYCLE,
        ColorSpaceType.SRGB,
        place);
  }

  private static String sheet(String name) {
    String file = SHEETS + name + ".css";
    try (InputStream in =
        Objects.requireNonNull(DrawingPalette.class.getResourceAsStream(file), file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
