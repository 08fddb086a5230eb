package lampwright.exporters;

import java.util.Locale;
import lampwright.engine.check.Checks;

/**
 * What a builder may choose for an export.
 *
 * @param hexAddress address of the first byte in Intel HEX files, 0 to {@link #MAX_ADDRESS}
 */
public record ExportOptions(long hexAddress) {
  /** The last byte that Intel HEX with extended linear addresses can reach. */
  public static final long MAX_ADDRESS = 0xFFFF_FFFFL;

  /** Tables from address 0. */
  public static final ExportOptions DEFAULT = new ExportOptions(0);

  public ExportOptions {
    Checks.of("export options")
        .that(
            hexAddress >= 0 && hexAddress <= MAX_ADDRESS,
            "at",
            hexAddress < 0 ? Long.toString(hexAddress) : address(hexAddress),
            "must be between 0 and " + address(MAX_ADDRESS))
        .done();
  }

  /** An address as people write it: {@code 0x1000}. */
  public static String address(long address) {
    return "0x" + Long.toHexString(address).toUpperCase(Locale.ROOT);
  }
}
