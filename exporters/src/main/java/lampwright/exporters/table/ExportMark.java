package lampwright.exporters.table;

import java.util.List;

/**
 * The number of an export that its header defines, and what its other files hold so that they don't
 * compile beside the header of another export: files of different exports play, but not what was
 * seen.
 *
 * @param header the header's file name
 * @param macro the constant that the header defines
 * @param crc CRC-32 of what tells this export from others
 */
public record ExportMark(String header, String macro, long crc) {
  /** The line that the header has. */
  public String define() {
    return "#define " + macro + " " + CText.number32(crc);
  }

  /**
   * Lines that stop the compiler where the header is of another export; it has to be included
   * before.
   *
   * @param file what the lines are in, for the message
   */
  public List<String> check(String file) {
    return List.of(
        "#if " + macro + " != " + CText.number32(crc),
        "#error \"" + header + " and " + file + " are of different exports: export again.\"",
        "#endif");
  }
}
