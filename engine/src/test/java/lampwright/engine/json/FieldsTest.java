package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import lampwright.engine.check.Checks;
import lampwright.engine.check.Fault;
import lampwright.engine.document.FieldWords;
import lampwright.engine.document.Project;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.FieldType;
import lampwright.engine.field.Group;
import lampwright.engine.field.KeyedType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.NarrowType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Part;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.UnionType;
import lampwright.engine.field.WholeType;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every field of the project file goes all the ways that a field goes. */
class FieldsTest {
  /** A number of a field, and a record that has the field. */
  record Ranged<R, V>(Shape<R> shape, Field<R, V> field) {
    @Override
    public String toString() {
      return shape + "." + field;
    }
  }

  /** Every shape that a project file can have. */
  static Set<Shape<?>> shapes() {
    Set<Shape<?>> found = new LinkedHashSet<>();
    collect(Project.SHAPE, found);
    return found;
  }

  private static void collect(Shape<?> shape, Set<Shape<?>> found) {
    if (found.add(shape)) {
      for (Part<?, ?> part : shape.parts()) {
        if (part instanceof Group<?, ?> group) {
          collect(group.parts(), found);
        } else if (part instanceof Field<?, ?> field) {
          within(field.type()).forEach(inner -> collect(inner, found));
        }
      }
    }
  }

  private static Collection<Shape<?>> within(FieldType<?> type) {
    if (type instanceof OptionalType<?, ?> optional) {
      return within(optional.some());
    } else if (type instanceof ListType<?> list) {
      return within(list.each());
    } else if (type instanceof KeyedType<?, ?> keyed) {
      return within(keyed.each());
    } else if (type instanceof NarrowType<?, ?> narrow) {
      return within(narrow.wide());
    } else if (type instanceof RecordType<?> record) {
      return List.of(record.shape());
    }
    return type instanceof UnionType<?> union ? List.copyOf(union.shapes()) : List.of();
  }

  static Stream<Field<?, ?>> fields() {
    return shapes().stream()
        .flatMap(shape -> shape.parts().stream())
        .filter(Field.class::isInstance)
        .map(part -> (Field<?, ?>) part);
  }

  @Test
  void everyPatternIsReached() {
    assertThat(shapes()).containsAll(Patterns.ANY.shapes());
    assertThat(Patterns.ANY.shapes())
        .hasSameSizeAs(Arrays.asList(Pattern.class.getPermittedSubclasses()));
  }

  @ParameterizedTest
  @MethodSource("fields")
  void fieldHasWords(Field<?, ?> field) {
    assertThat(FieldWords.knows(field)).as(field.shape() + "." + field).isTrue();
  }

  static Stream<Ranged<?, ?>> ranged() {
    return fields().<Ranged<?, ?>>map(field -> ranged(field)).filter(r -> past(r) != null);
  }

  private static <R, V> Ranged<R, V> ranged(Field<R, V> field) {
    return new Ranged<>(field.shape(), field);
  }

  // A value past the greatest of the field, if it has one.
  private static Object past(Ranged<?, ?> of) {
    return past(of.field().type());
  }

  private static Object past(FieldType<?> type) {
    if (type instanceof DecimalType decimal) {
      return BigDecimal.valueOf(decimal.max()).add(BigDecimal.ONE);
    } else if (type instanceof NumberType number) {
      return number.max() + 1;
    } else if (type instanceof WholeType<?> whole && whole.max() < Integer.MAX_VALUE) {
      return whole.of().apply(whole.max() + 1);
    } else if (type instanceof OptionalType<?, ?> optional) {
      return closed(optional);
    }
    return null;
  }

  @SuppressWarnings("unchecked") // past() gives what the type holds
  private static <E, P> Object closed(OptionalType<E, P> type) {
    E some = (E) past(type.some());
    return some == null ? null : type.close().apply(Optional.of(some));
  }

  @ParameterizedTest
  @MethodSource("ranged")
  @SuppressWarnings("unchecked") // past() gives what the field holds
  <R, V> void recordRefusesWhatIsPastTheRangeByTheNameOfTheField(Ranged<R, V> of) {
    Checks checks = Checks.of("test");
    of.field().type().check(of.field().name(), (V) past(of), checks);
    assertThat(checks.faults()).extracting(Fault::field).containsExactly(of.field().name());

    if (of.shape().type().isRecord()) {
      RandomValues random = new RandomValues(new Chance(new Random(7)), shape -> true);
      R record = random.record(of.shape());
      assertThatThrownBy(() -> of.field().with(record, (V) past(of)))
          .hasMessageContaining(of.field().name() + ": ");
    }
  }

  @Test
  void schemaOfAFileIsKept() {
    String text =
        "{\"lampwright\": 1, \"$schema\": \"x.json\", \"rig\": {\"outputs\": [{\"id\": \"o\"}]}}";
    Project project = ProjectReader.read("p", text.getBytes(UTF_8)).project().orElseThrow();
    assertThat(project.schema()).contains("x.json");
    assertThat(ProjectWriter.write(project)).contains("\"$schema\": \"x.json\"");
  }
}
