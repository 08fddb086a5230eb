package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What a field can hold, and how it is had from JSON.
 *
 * @param type the JSON type
 * @param allowed what is accepted, for messages
 * @param names the words that are accepted, if only some are
 * @param reading the value; empty if it is not accepted
 */
record ValueKind<T>(
    Class<? extends Json> type,
    String allowed,
    Collection<String> names,
    Function<Json, Optional<T>> reading) {
  static final ValueKind<String> TEXT = text("must be a string", Optional::of);

  static final ValueKind<Double> NUMBER =
      number(
          "must be a number",
          raw -> {
            var value = Numbers.nearest(raw);
            return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
          });

  static final ValueKind<BigDecimal> DECIMAL = number("must be a number", Numbers::decimal);

  static final ValueKind<Long> WHOLE = number("must be a whole number", Numbers::whole);

  static final ValueKind<Boolean> FLAG =
      new ValueKind<>(
          Json.Flag.class,
          "must be true or false",
          List.of(),
          json -> json instanceof Json.Flag flag ? Optional.of(flag.value()) : Optional.empty());

  static final ValueKind<List<Json>> LIST =
      new ValueKind<>(
          Json.Arr.class,
          "must be a list",
          List.of(),
          json -> json instanceof Json.Arr list ? Optional.of(list.items()) : Optional.empty());

  static final ValueKind<Json.Obj> OBJECT = object("must be an object");

  /** An object, called by what it represents. */
  static ValueKind<Json.Obj> object(String allowed) {
    return new ValueKind<>(
        Json.Obj.class,
        allowed,
        List.of(),
        json -> json instanceof Json.Obj object ? Optional.of(object) : Optional.empty());
  }

  /** Text of a certain form. */
  static <T> ValueKind<T> text(String allowed, Function<String, Optional<T>> reading) {
    return new ValueKind<>(
        Json.Text.class,
        allowed,
        List.of(),
        json -> json instanceof Json.Text text ? reading.apply(text.value()) : Optional.empty());
  }

  /** One word of a few. */
  static <T> ValueKind<T> choice(List<T> values, Function<T, String> key) {
    List<String> keys = values.stream().map(key).toList();
    Function<String, Optional<T>> reading =
        text -> values.stream().filter(v -> key.apply(v).equals(text)).findFirst();
    return text("must be " + either(keys), reading).knowing(keys);
  }

  /** The same, with names to suggest. */
  ValueKind<T> knowing(Collection<String> known) {
    return new ValueKind<>(type, allowed, known, reading);
  }

  /** The same, with other words for what is allowed. */
  ValueKind<T> allowing(String other) {
    return new ValueKind<>(type, other, names, reading);
  }

  Optional<T> read(Json json) {
    return reading.apply(json);
  }

  /** Words as {@code a, b or c}. */
  static String either(List<String> words) {
    int last = words.size() - 1;
    return last < 1
        ? String.join("", words)
        : words.stream().limit(last).collect(Collectors.joining(", ")) + " or " + words.get(last);
  }

  private static <T> ValueKind<T> number(String allowed, Function<String, Optional<T>> reading) {
    return new ValueKind<>(
        Json.Num.class,
        allowed,
        List.of(),
        json -> json instanceof Json.Num number ? reading.apply(number.raw()) : Optional.empty());
  }
}
