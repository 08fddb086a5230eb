package lampwright.engine.rig;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import lampwright.engine.check.Checks;
import lampwright.engine.field.FormType;
import lampwright.engine.light.EmitterKind;

/**
 * The order in which a pixel takes its bytes off the line, such as GRB or GRBW.
 *
 * @param emitters red, green and blue once each, and white at most once
 */
public record EmitterOrder(List<EmitterKind> emitters) {
  /** What {@link #parse} accepts, for messages. */
  public static final String ALLOWED = "must have R, G and B once each, and W at most once";

  /** How project files write it. */
  public static final FormType<EmitterOrder> TYPE =
      new FormType<>(
          "order",
          ALLOWED,
          "^(?!.*(.).*\\1)(?=.*R)(?=.*G)(?=.*B)[RGBW]{3,4}$",
          List.of("GRB", "RGB", "GRBW", "RGBW", "BRG", "BGR", "WRGB"),
          4,
          EmitterOrder::parse,
          EmitterOrder::letters);

  public EmitterOrder {
    emitters = List.copyOf(emitters);
    boolean each = emitters.stream().distinct().count() == emitters.size();
    boolean colours =
        emitters.containsAll(List.of(EmitterKind.RED, EmitterKind.GREEN, EmitterKind.BLUE));
    Checks.of("order").that(each && colours, "order", letters(emitters), ALLOWED).done();
  }

  /** Reads an order from its letters, such as {@code GRBW}; empty if they are no order. */
  public static Optional<EmitterOrder> parse(String letters) {
    String sorted =
        letters
            .chars()
            .sorted()
            .mapToObj(c -> String.valueOf((char) c))
            .collect(Collectors.joining());
    if (!sorted.equals("BGR") && !sorted.equals("BGRW")) {
      return Optional.empty();
    }
    return Optional.of(new EmitterOrder(letters.chars().mapToObj(EmitterOrder::kind).toList()));
  }

  /** Bytes per pixel: 3 or 4. */
  public int size() {
    return emitters.size();
  }

  /** The order as its letters. */
  public String letters() {
    return letters(emitters);
  }

  private static String letters(List<EmitterKind> emitters) {
    return emitters.stream().map(e -> String.valueOf(e.letter())).collect(Collectors.joining());
  }

  private static EmitterKind kind(int letter) {
    for (EmitterKind kind : EmitterKind.values()) {
      if (kind.letter() == letter) {
        return kind;
      }
    }
    throw new IllegalArgumentException(String.format(Locale.ROOT, "letter: %c", letter));
  }
}
