package lampwright.app.workshop.edit;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.rig.Pin;

/** The controller's pin at which a chain or driver output begins. */
final class PinSetting {
  private PinSetting() {}

  /** The setting of a record that has such a pin. */
  static <R> Setting<R, Optional<String>> of(
      Function<R, Optional<Pin>> get, BiFunction<R, Optional<Pin>, R> set) {
    return new Setting<>(
        "pin",
        new Kind.Maybe<>(new Kind.Text(4), "PB0"),
        r -> get.apply(r).map(Pin::name),
        (r, v) -> set.apply(r, v.map(Pin::new)));
  }
}
