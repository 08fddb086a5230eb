package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.google.common.hash.HashCode;
import com.google.common.hash.Hashing;
import java.util.Locale;
import lampwright.exporters.table.ExportMark;

/**
 * A generated header that carries a number made from its content, which the other files of the same
 * export check.
 *
 * @param name of the header in the folder
 * @param text of it, without the number
 * @param crc CRC-32 of the text and what goes with it
 */
record MarkedHeader(String name, String text, long crc) {
  private static final String END = "\n#endif\n";

  /**
   * A header.
   *
   * @param with bytes that belong to it
   */
  static MarkedHeader of(String name, String text, byte... with) {
    HashCode crc = Hashing.crc32().newHasher().putString(text, UTF_8).putBytes(with).hash();
    return new MarkedHeader(name, text, crc.padToLong());
  }

  /** The header with its number. */
  String header() {
    if (!text.endsWith(END)) {
      throw new IllegalArgumentException(name + ": must end with the #endif of its guard");
    }
    return text.substring(0, text.length() - END.length())
        + "\n/* Tells this export from others. Leave it as it is if you change this file. */\n"
        + mark().define()
        + "\n"
        + END;
  }

  /** Includes the header. */
  String include() {
    return "\n#include \"" + file() + "\"\n";
  }

  /** Stops the compiler where the header is of another export; it has to be included before. */
  String check() {
    // README.md says what to do about a .new file.
    return "\n" + String.join("\n", mark().check("this file")) + "\n";
  }

  private String file() {
    return name.substring(name.lastIndexOf('/') + 1);
  }

  private ExportMark mark() {
    String stem = file().substring(0, file().lastIndexOf('.'));
    return new ExportMark(file(), stem.toUpperCase(Locale.ROOT) + "_EXPORT", crc);
  }
}
