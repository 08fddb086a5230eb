package lampwright.engine.json;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.function.Supplier;

/** Random numbers and texts, such as people write and such as they do not. */
final class Chance {
  private static final List<String> TEXTS =
      List.of(
          "*/ #include \"x\" /*",
          "../../x",
          "\\\"\u0000\u001b[31m\u202e\u2028",
          "Küstenwache İstanbul 灯台 \uD83D\uDEA8",
          "\uD83D");

  private final Random random;

  Chance(Random random) {
    this.random = random;
  }

  boolean once(int in) {
    return random.nextInt(in) == 0;
  }

  boolean flag() {
    return random.nextBoolean();
  }

  int whole(int min, int max) {
    return min + random.nextInt(max - min + 1);
  }

  <T> T of(List<T> values) {
    return values.get(random.nextInt(values.size()));
  }

  @SafeVarargs
  final <T> T of(T... values) {
    return values[random.nextInt(values.length)];
  }

  <T> List<T> shuffled(List<T> values) {
    List<T> mixed = new ArrayList<>(values);
    java.util.Collections.shuffle(mixed, random);
    return mixed;
  }

  <T> List<T> list(int min, int max, Supplier<T> each) {
    List<T> list = new ArrayList<>();
    int count = whole(min, max);
    for (int i = 0; i < count; i++) {
      list.add(each.get());
    }
    return list;
  }

  /** Up to so many values with different keys. */
  <T> List<T> distinct(int max, Supplier<T> each, Function<T, String> key) {
    Map<String, T> byKey = new LinkedHashMap<>();
    list(0, max, each).forEach(value -> byKey.put(key.apply(value), value));
    return List.copyOf(byKey.values());
  }

  <T> Optional<T> maybe(Supplier<T> value) {
    return flag() ? Optional.of(value.get()) : Optional.empty();
  }

  /** A bound, a round number or any double. */
  double number(double min, double max) {
    double any = min + random.nextDouble() * (max - min);
    double round = Math.rint(any * 100) / 100;
    double value =
        switch (random.nextInt(8)) {
          case 0 -> min;
          case 1 -> max;
          case 2 -> any;
          default -> round;
        };
    // A negative zero is written as the zero that it is.
    return Math.max(min, Math.min(max, value)) + 0.0;
  }

  /** A bound, or a decimal of up to 6 decimals. */
  BigDecimal decimal(String min, String max) {
    BigDecimal low = new BigDecimal(min);
    BigDecimal high = new BigDecimal(max);
    if (once(8)) {
      return flag() ? low : high;
    }
    int scale = flag() ? 0 : whole(1, 6);
    BigDecimal width = high.subtract(low).setScale(scale, RoundingMode.FLOOR);
    BigInteger steps = width.unscaledValue().add(BigInteger.ONE);
    BigInteger step = new BigInteger(64, random).mod(steps);
    return low.add(new BigDecimal(step, scale));
  }

  /** Texts of all kinds, up to 30 characters. */
  String text() {
    if (once(3)) {
      return "";
    }
    if (once(4)) {
      return of(TEXTS);
    }
    StringBuilder text = new StringBuilder();
    boolean plain = flag();
    for (int i = whole(1, 30); i > 0; i--) {
      text.append((char) (plain ? whole('A', 'z') : whole(0, 0xffff)));
    }
    return text.toString();
  }

  String id(String prefix) {
    StringBuilder id = new StringBuilder(prefix);
    for (int i = whole(0, 8); i > 0; i--) {
      id.append("abcdefghijklmnopqrstuvwxyz0123456789-".charAt(whole(0, 36)));
    }
    return id.toString();
  }
}
