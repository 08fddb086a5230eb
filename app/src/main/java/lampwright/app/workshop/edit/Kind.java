package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.rig.PixelRun;

/**
 * What kind of value a setting has, and so with what control it is changed. The ranges are those of
 * the model's records, which have the last word.
 */
public sealed interface Kind<V> {
  /**
   * A number.
   *
   * @param unit key of its unit's text, such as {@code ms}; empty if it has none
   * @param min least value, inclusive
   * @param max greatest value, inclusive
   * @param step by which keys and the wheel change it; its whole multiples if that is 1
   */
  record Amount(String unit, BigDecimal min, BigDecimal max, BigDecimal step)
      implements Kind<BigDecimal> {
    public static Amount of(String unit, double min, double max, double step) {
      return new Amount(
          unit, BigDecimal.valueOf(min), BigDecimal.valueOf(max), BigDecimal.valueOf(step));
    }
  }

  /** A whole number, as {@link Amount} else. */
  record Whole(String unit, long min, long max) implements Kind<Long> {}

  /** Yes or no. */
  record Flag() implements Kind<Boolean> {}

  /** A text of at most so many characters. */
  record Text(int maxLength) implements Kind<String> {}

  /**
   * One of a few.
   *
   * @param group of their texts: each is {@code group.key}
   * @param key a value's word in project files; its name where there are no such texts
   */
  record Choice<E>(String group, List<E> values, Function<E, String> key) implements Kind<E> {
    public Choice {
      values = List.copyOf(values);
    }
  }

  /**
   * A value that may be left out.
   *
   * @param usual what it begins with when it is put in
   */
  record Maybe<V>(Kind<V> kind, V usual) implements Kind<Optional<V>> {}

  /** A colour in any of its forms. */
  record Colours() implements Kind<Colour> {}

  /** How a value goes from one to the next. */
  record Easings() implements Kind<Easing> {}

  /** Numbers in a row, such as angles in degrees. */
  record Numbers(Amount each, int maxCount) implements Kind<List<BigDecimal>> {}

  /** Colours at times. */
  record KeyframeRows() implements Kind<List<Keyframe>> {}

  /** The pixels of a lamp. */
  record Runs() implements Kind<List<PixelRun>> {}
}
