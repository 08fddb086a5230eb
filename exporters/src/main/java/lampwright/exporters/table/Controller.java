package lampwright.exporters.table;

/**
 * A microcontroller in common use. Flash sizes are those of the datasheets.
 *
 * @param name as its maker writes it
 * @param flashBytes program memory, above 0
 */
record Controller(String name, int flashBytes) {
  static final Controller[] WITH_FLASH = {
    new Controller("ATmega328P", 32 * 1024),
    new Controller("ATmega32U4", 32 * 1024),
    new Controller("ATtiny85", 8 * 1024)
  };

  /** What share of the flash a table takes, in words: {@code 20.2 % of 32768 bytes of flash}. */
  String share(long bytes) {
    // Rounded up, so that what does not quite fit never reads 100.0 %.
    long tenths = Math.floorDiv(Math.multiplyExact(bytes, 1000L) + flashBytes - 1, flashBytes);
    String share = tenths / 10 + "." + tenths % 10 + " % of " + flashBytes + " bytes of flash";
    return bytes > flashBytes ? share + ", does not fit" : share;
  }
}
