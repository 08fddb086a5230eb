package lampwright.exporters.table;

import lampwright.exporters.target.Target;

/** What share of a controller's program memory a table takes. */
final class FlashShare {
  private FlashShare() {}

  /** The share in words: {@code 20.2 % of 32256 bytes of free flash}. */
  static String words(Target target, long bytes) {
    if (target.memory().freeFlashBytes().isEmpty()) {
      return "flash is outside the chip: see the board";
    }
    int flash = target.memory().freeFlashBytes().getAsInt();
    // Rounded up, so that what does not quite fit never reads 100.0 %.
    long tenths = Math.floorDiv(Math.multiplyExact(bytes, 1000L) + flash - 1, flash);
    String share = tenths / 10 + "." + tenths % 10 + " % of " + flash + " bytes of free flash";
    return bytes > flash ? share + ", does not fit" : share;
  }
}
