package lampwright.engine.light;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.FormType;
import lampwright.engine.field.NarrowType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.UnionType;
import lampwright.engine.field.Unit;

/** The ways in which a project file writes colours. */
public final class Colours {
  private static final Pattern HEX = Pattern.compile("#[0-9A-Fa-f]{6}");

  private static final FormType<Colour.Srgb> CODE =
      new FormType<>(
          "srgb",
          "must be # followed by six hexadecimal digits",
          "^" + HEX.pattern() + "$",
          List.of("#FFA000", "#FFFFFF", "#000000", "#FF0000", "#00FF00", "#0000FF"),
          7,
          Colours::parse,
          Colours::code);

  private static final Shape<Colour.Srgb> SRGB =
      Shape.single(
          Colour.Srgb.class,
          Field.required("srgb", CODE, colour -> colour, (Colour.Srgb) Colour.WHITE));

  private static final Shape<Colour.Kelvin> KELVIN =
      Shape.of(
          "kelvin",
          Colour.Kelvin.class,
          Field.required("kelvin", Colour.Kelvin.RANGE, Colour.Kelvin::kelvin, 3000.0));

  private static final Shape<Colour.Hue> HUE =
      Shape.of(
          "hue",
          Colour.Hue.class,
          Field.<Colour.Hue, Double>required(
                  "hue", new NumberType(Unit.DEGREES, 0, 360), Colour.Hue::degrees, 0.0)
              .as("degrees"),
          Field.usual("saturation", NumberType.SHARE, Colour.Hue::saturation, 1.0));

  private static final Shape<Colour.Signal> SIGNAL =
      Shape.of(
          "signal",
          Colour.Signal.class,
          Field.<Colour.Signal, SignalColour>required(
                  "signal",
                  ChoiceType.of("signal", SignalColour.class, SignalColour::key),
                  Colour.Signal::colour,
                  SignalColour.AMBER)
              .as("colour"));

  private static final Shape<Colour.Drive> DRIVES =
      Shape.of(
          "drives",
          Colour.Drive.class,
          Field.usual("r", NumberType.SHARE, Colour.Drive::r, 0.0),
          Field.usual("g", NumberType.SHARE, Colour.Drive::g, 0.0),
          Field.usual("b", NumberType.SHARE, Colour.Drive::b, 0.0),
          Field.usual("w", NumberType.SHARE, Colour.Drive::w, 0.0));

  private static final Shape<Colour.Drive> DRIVE =
      Shape.single(
          Colour.Drive.class,
          Field.required(
              "drive", RecordType.of(DRIVES), colour -> colour, new Colour.Drive(0, 0, 0, 0)));

  /** A colour in any of its forms. */
  public static final UnionType<Colour> ANY =
      new UnionType<>(
          "colour",
          "must be a colour: \"#RRGGBB\", or an object with srgb, kelvin, hue, signal or drive",
          "",
          List.of(SRGB, KELVIN, HUE, SIGNAL, DRIVE),
          Optional.empty(),
          Optional.of(new UnionType.Brief<>(Colour.Srgb.class, CODE)));

  /** An sRGB colour alone. */
  public static final NarrowType<Colour, Colour.Srgb> SRGB_ONLY =
      new NarrowType<>(ANY, Colour.Srgb.class, "another colour", "must be an srgb colour here");

  private Colours() {}

  private static Optional<Colour.Srgb> parse(String text) {
    if (!HEX.matcher(text).matches()) {
      return Optional.empty();
    }
    int code = Integer.parseInt(text.substring(1), 16);
    return Optional.of(new Colour.Srgb(code >> 16, code >> 8 & 0xff, code & 0xff));
  }

  private static String code(Colour.Srgb colour) {
    return String.format(Locale.ROOT, "#%02X%02X%02X", colour.red(), colour.green(), colour.blue());
  }
}
