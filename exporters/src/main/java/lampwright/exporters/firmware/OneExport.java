package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Locale;
import java.util.zip.CRC32;
import lampwright.exporters.table.CText;

/**
 * A generated header that carries a number made from its content, and what other files of the same
 * export hold so that they don't compile with another one: files of different exports play, but not
 * what was seen.
 *
 * @param name of the header in the folder
 * @param text of it, without the number
 * @param crc CRC-32 of the text and what goes with it
 */
record OneExport(String name, String text, long crc) {
  private static final String END = "\n#endif\n";

  /**
   * A header.
   *
   * @param with bytes that belong to it
   */
  static OneExport of(String name, String text, byte... with) {
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(UTF_8));
    crc.update(with);
    return new OneExport(name, text, crc.getValue());
  }

  /** The header with its number. */
  String header() {
    if (!text.endsWith(END)) {
      throw new IllegalArgumentException(name + ": needs an end that closes its #ifndef");
    }
    return text.substring(0, text.length() - END.length())
        + "\n/* Tells this export from others. Leave it as it is if you change this file. */\n#define "
        + macro()
        + " "
        + number()
        + "\n"
        + END;
  }

  /** Includes the header. */
  String include() {
    return "\n#include \"" + file() + "\"\n";
  }

  /** Stops the compiler where the header is of another export; it has to be included before. */
  String check() {
    // Short, so that no formatter breaks it; README.md says what to do about a .new file.
    return "\n#if "
        + macro()
        + " != "
        + number()
        + "\n#error \"this file and "
        + file()
        + " are of different exports: export again\"\n#endif\n";
  }

  private String file() {
    return name.substring(name.lastIndexOf('/') + 1);
  }

  private String macro() {
    String stem = file().substring(0, file().lastIndexOf('.'));
    return stem.toUpperCase(Locale.ROOT) + "_EXPORT";
  }

  private String number() {
    return CText.number32(crc);
  }
}
