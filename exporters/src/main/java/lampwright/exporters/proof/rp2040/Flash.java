package lampwright.exporters.proof.rp2040;

import java.util.Arrays;

/**
 * What is in the flash beside the controller: written pages of 256 bytes. Whoever writes a page
 * erases its sector of 4 KiB before, so the rest of it reads as ones; what other sectors hold is
 * not known.
 */
public final class Flash {
  /** Bytes of a page. */
  public static final int PAGE = 256;

  /** Greatest size that the controller can address. */
  public static final int MAX_BYTES = 16 << 20;

  private static final int SECTOR = 4096;

  private byte[] bytes = new byte[0];
  private final boolean[] erased = new boolean[MAX_BYTES / SECTOR];
  private final boolean[] written = new boolean[MAX_BYTES / PAGE];

  /** Empty flash. */
  public Flash() {}

  /**
   * Writes a page.
   *
   * @param offset from the start of flash, whole pages
   * @throws IllegalArgumentException if it is no page, or was written before
   */
  public void write(int offset, byte[] page) {
    if (offset < 0 || offset % PAGE != 0 || offset + PAGE > MAX_BYTES || page.length != PAGE) {
      throw new IllegalArgumentException("offset " + offset + ": no page of flash");
    }
    if (written[offset / PAGE]) {
      throw new IllegalArgumentException("offset " + offset + ": written twice");
    }
    written[offset / PAGE] = true;
    int end = (offset / SECTOR + 1) * SECTOR;
    if (bytes.length < end) {
      bytes = Arrays.copyOf(bytes, end);
    }
    if (!erased[offset / SECTOR]) {
      erased[offset / SECTOR] = true;
      Arrays.fill(bytes, end - SECTOR, end, (byte) 0xFF);
    }
    System.arraycopy(page, 0, bytes, offset, PAGE);
  }

  /** Whole flash from its start to the last sector that is known; the array itself. */
  byte[] bytes() {
    return bytes;
  }

  boolean isKnown(int offset) {
    return offset < bytes.length && erased[offset / SECTOR];
  }
}
