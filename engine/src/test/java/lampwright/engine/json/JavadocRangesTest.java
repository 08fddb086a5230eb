package lampwright.engine.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.FieldType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.WholeType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A range in the Javadoc of a record's component is that of its field. */
class JavadocRangesTest {
  private static final Pattern RANGE =
      Pattern.compile("(?:(above) 0,?|(-?[\\d,.]*\\d)) to (a day|-?\\d[\\d,]*(?:\\.\\d+)?)");
  private static final double DAY_MS = 24 * 3600 * 1000;

  /** From the least, which may be excluded, to the greatest. */
  private record Range(double min, boolean above, double max) {}

  /** A field and the range in the Javadoc of its component. */
  private record Documented(Field<?, ?> field, Range range) {
    @Override
    public String toString() {
      return field.shape() + "." + field;
    }
  }

  static Stream<Documented> documented() {
    return FieldsTest.fields()
        .filter(field -> field.shape().type().isRecord())
        .flatMap(field -> inJavadoc(field).map(range -> new Documented(field, range)).stream())
        .filter(documented -> ofType(documented.field.type()).isPresent());
  }

  @ParameterizedTest
  @MethodSource("documented")
  void javadocHasTheRangeOfTheField(Documented of) {
    assertThat(of.range).isEqualTo(ofType(of.field.type()).orElseThrow());
  }

  @Test
  void mostRangesAreDocumented() {
    assertThat(documented()).hasSizeGreaterThan(40);
  }

  private static Optional<Range> ofType(FieldType<?> type) {
    if (type instanceof NumberType number) {
      return Optional.of(new Range(number.min(), number.above(), number.max()));
    } else if (type instanceof DecimalType decimal) {
      return Optional.of(new Range(decimal.min(), decimal.above(), decimal.max()));
    } else if (type instanceof WholeType<?> whole) {
      return Optional.of(new Range(whole.min(), false, whole.max()));
    } else if (type instanceof OptionalType<?, ?> optional) {
      return ofType(optional.some());
    }
    return type instanceof ListType<?> list ? ofType(list.each()) : Optional.empty();
  }

  private static Optional<Range> inJavadoc(Field<?, ?> field) {
    Matcher comment =
        Pattern.compile(
                "/\\*\\*((?:(?!\\*/).)*)\\*/\\s*(?:@\\w+\\s+)*(?:public )?record "
                    + field.shape().type().getSimpleName()
                    + "\\(",
                Pattern.DOTALL)
            .matcher(source(field.shape().type()));
    if (!comment.find()) {
      return Optional.empty();
    }
    Matcher component =
        Pattern.compile("@param " + field.component() + " ([^@]*)")
            .matcher(comment.group(1).replaceAll("\\s*\\n\\s*\\*\\s*", " "));
    if (!component.find()) {
      return Optional.empty();
    }
    Matcher range = RANGE.matcher(component.group(1));
    return range.find()
        ? Optional.of(
            new Range(
                range.group(1) != null ? 0 : number(range.group(2)),
                range.group(1) != null,
                number(range.group(3))))
        : Optional.empty();
  }

  private static double number(String text) {
    return text.equals("a day") ? DAY_MS : Double.parseDouble(text.replace(",", ""));
  }

  private static String source(Class<?> type) {
    String file = type.getName().replaceFirst("\\$.*", "").replace('.', '/') + ".java";
    try {
      return Files.readString(Path.of("src", "main", "java").resolve(file));
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }
}
