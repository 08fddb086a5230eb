package lampwright.exporters.packed.encode;

/** Range checks whose message names the value and what is allowed. */
final class Limits {
  private Limits() {}

  static int check(String name, int value, int least, int most) {
    if (value < least || value > most) {
      throw new IllegalArgumentException(
          name + ": " + value + ": must be between " + least + " and " + most);
    }
    return value;
  }
}
