package lampwright.engine.pattern;

import com.google.common.collect.ImmutableMap;

/** The letters and figures of the Morse code (Recommendation ITU-R M.1677-1). */
final class MorseCode {
  private static final ImmutableMap<Character, String> SIGNS =
      ImmutableMap.<Character, String>builder()
          .put('A', ".-")
          .put('B', "-...")
          .put('C', "-.-.")
          .put('D', "-..")
          .put('E', ".")
          .put('F', "..-.")
          .put('G', "--.")
          .put('H', "....")
          .put('I', "..")
          .put('J', ".---")
          .put('K', "-.-")
          .put('L', ".-..")
          .put('M', "--")
          .put('N', "-.")
          .put('O', "---")
          .put('P', ".--.")
          .put('Q', "--.-")
          .put('R', ".-.")
          .put('S', "...")
          .put('T', "-")
          .put('U', "..-")
          .put('V', "...-")
          .put('W', ".--")
          .put('X', "-..-")
          .put('Y', "-.--")
          .put('Z', "--..")
          .put('0', "-----")
          .put('1', ".----")
          .put('2', "..---")
          .put('3', "...--")
          .put('4', "....-")
          .put('5', ".....")
          .put('6', "-....")
          .put('7', "--...")
          .put('8', "---..")
          .put('9', "----.")
          .buildOrThrow();

  private MorseCode() {}

  /** The dots and dashes of a capital letter or figure. */
  static String of(char sign) {
    String code = SIGNS.get(sign);
    if (code == null) {
      throw new IllegalArgumentException("must have capital letters and digits only");
    }
    return code;
  }
}
