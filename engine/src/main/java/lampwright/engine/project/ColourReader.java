package lampwright.engine.project;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;

/** Reads colours. */
final class ColourReader {
  static final List<String> FORMS = List.of("srgb", "kelvin", "hue", "signal", "drive");
  static final double DEFAULT_SATURATION = 1;

  private static final Pattern HEX = Pattern.compile("#[0-9A-Fa-f]{6}");
  private static final String ALLOWED =
      "needs a colour: \"#RRGGBB\", or an object with " + ValueKind.either(FORMS);
  private static final ValueKind<Colour.Srgb> SRGB =
      ValueKind.text("needs # and six hexadecimal digits", ColourReader::srgb);
  private static final ValueKind<SignalColour> SIGNAL =
      ValueKind.choice(SignalColour.values(), SignalColour::key);

  private ColourReader() {}

  /** The colour of a field; empty if it is not given or not accepted. */
  static Optional<Colour> given(Fields fields, String name) {
    Optional<Colour> colour = fields.find(name).flatMap(ColourReader::read);
    if (colour.isEmpty() && fields.has(name)) {
      fields.breaks(name);
    }
    return colour;
  }

  /** The colour of a field that must be sRGB. */
  static Optional<Colour.Srgb> givenSrgb(Fields fields, String name) {
    Optional<Colour> colour = given(fields, name);
    if (colour.isPresent() && colour.get() instanceof Colour.Srgb srgb) {
      return Optional.of(srgb);
    }
    if (colour.isPresent()) {
      fields.breaks(name);
      fields.find(name).orElseThrow().error("another colour", "needs an srgb colour here");
    }
    return Optional.empty();
  }

  private static Optional<Colour> read(Located at) {
    if (at.json() instanceof Json.Text) {
      return at.as(SRGB).map(c -> c);
    }
    Fields fields = at.fields(ALLOWED);
    if (!(at.json() instanceof Json.Obj)) {
      return Optional.empty();
    }
    List<String> forms = FORMS.stream().filter(fields::has).toList();
    if (forms.size() != 1) {
      FORMS.forEach(fields::find);
      fields.find("saturation");
      fields.close();
      // A misspelt form was reported as such.
      if (fields.sound()) {
        at.error(
            forms.isEmpty() ? "an object without a colour" : String.join(" and ", forms),
            "needs one of " + ValueKind.either(FORMS));
      }
      return Optional.empty();
    }
    Colour colour = fields.build(() -> one(forms.get(0), fields), () -> Colour.WHITE);
    fields.close();
    return fields.sound() ? Optional.of(colour) : Optional.empty();
  }

  private static Colour one(String form, Fields fields) {
    return switch (form) {
      case "srgb" -> fields.required("srgb", SRGB, (Colour.Srgb) Colour.WHITE);
      case "kelvin" ->
          new Colour.Kelvin(fields.required("kelvin", ValueKind.NUMBER, Colour.Kelvin.MIN));
      case "hue" ->
          new Colour.Hue(
              fields.required("hue", ValueKind.NUMBER, 0.0),
              fields.optional("saturation", ValueKind.NUMBER, DEFAULT_SATURATION));
      case "signal" -> new Colour.Signal(fields.required("signal", SIGNAL, SignalColour.AMBER));
      default -> drive(fields);
    };
  }

  private static Colour drive(Fields fields) {
    Fields drives = fields.find("drive").orElseThrow().fields();
    Colour colour =
        fields.build(
            () ->
                new Colour.Drive(
                    drives.optional("r", ValueKind.NUMBER, 0.0),
                    drives.optional("g", ValueKind.NUMBER, 0.0),
                    drives.optional("b", ValueKind.NUMBER, 0.0),
                    drives.optional("w", ValueKind.NUMBER, 0.0)),
            () -> Colour.WHITE);
    drives.close();
    if (!drives.sound()) {
      fields.breaks("drive");
    }
    return colour;
  }

  private static Optional<Colour.Srgb> srgb(String text) {
    if (!HEX.matcher(text).matches()) {
      return Optional.empty();
    }
    int code = Integer.parseInt(text.substring(1), 16);
    return Optional.of(new Colour.Srgb(code >> 16, code >> 8 & 0xff, code & 0xff));
  }
}
