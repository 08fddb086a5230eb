package lampwright.engine.project;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import lampwright.engine.check.Checks;
import lampwright.engine.light.Colour;

/** Writes the fields of one object in the order in which they are given. */
final class FieldWriter {
  private final Out.Group object = Out.Group.object();

  Out done() {
    return object;
  }

  FieldWriter value(String name, Out value) {
    object.put(name, value);
    return this;
  }

  FieldWriter text(String name, String value) {
    return value(name, new Out.Word(JsonText.quoted(value)));
  }

  FieldWriter number(String name, double value) {
    return value(name, number(value));
  }

  FieldWriter decimal(String name, BigDecimal value) {
    return value(name, new Out.Word(value.toPlainString()));
  }

  FieldWriter flag(String name, boolean value) {
    return value(name, new Out.Word(String.valueOf(value)));
  }

  FieldWriter colour(String name, Colour value) {
    return value(name, colour(value));
  }

  /** Writes a text unless it is the one that a reader assumes. */
  FieldWriter textUnless(String usual, String name, String value) {
    return value.equals(usual) ? this : text(name, value);
  }

  /** Writes a number unless it is the one that a reader assumes. */
  FieldWriter numberUnless(double usual, String name, double value) {
    return value == usual ? this : number(name, value);
  }

  /** Writes a decimal unless it is the one that a reader assumes. */
  FieldWriter decimalUnless(BigDecimal usual, String name, BigDecimal value) {
    return value.compareTo(usual) == 0 ? this : decimal(name, value);
  }

  /** Writes a flag unless it is the one that a reader assumes. */
  FieldWriter flagUnless(boolean usual, String name, boolean value) {
    return value == usual ? this : flag(name, value);
  }

  /** Writes a colour unless it is the one that a reader assumes. */
  FieldWriter colourUnless(Colour usual, String name, Colour value) {
    return value.equals(usual) ? this : colour(name, value);
  }

  /** Writes a list unless it is empty. */
  <T> FieldWriter list(String name, List<T> values, Function<T, Out> each) {
    return values.isEmpty() ? this : value(name, list(values, each));
  }

  static <T> Out list(List<T> values, Function<T, Out> each) {
    Out.Group list = Out.Group.list();
    values.forEach(value -> list.add(each.apply(value)));
    return list;
  }

  static Out number(double value) {
    return new Out.Word(Checks.exact(value));
  }

  private static Out colour(Colour colour) {
    if (colour instanceof Colour.Srgb srgb) {
      String code =
          String.format(Locale.ROOT, "#%02X%02X%02X", srgb.red(), srgb.green(), srgb.blue());
      return new Out.Word(JsonText.quoted(code));
    }
    FieldWriter fields = new FieldWriter();
    if (colour instanceof Colour.Kelvin white) {
      fields.number("kelvin", white.kelvin());
    } else if (colour instanceof Colour.Hue hue) {
      fields
          .number("hue", hue.degrees())
          .numberUnless(ColourReader.DEFAULT_SATURATION, "saturation", hue.saturation());
    } else if (colour instanceof Colour.Signal signal) {
      fields.text("signal", signal.colour().key());
    } else if (colour instanceof Colour.Drive drive) {
      FieldWriter drives =
          new FieldWriter()
              .numberUnless(0, "r", drive.r())
              .numberUnless(0, "g", drive.g())
              .numberUnless(0, "b", drive.b())
              .numberUnless(0, "w", drive.w());
      fields.value("drive", drives.done());
    }
    return fields.done();
  }
}
