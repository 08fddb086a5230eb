package lampwright.exporters.proof;

import java.util.Locale;

/** A file is no UF2 file for the controller. */
public final class Uf2Exception extends Exception {
  private static final long serialVersionUID = 1;

  private final int block;
  private final String reason;

  Uf2Exception(int block, String reason) {
    super(String.format(Locale.ROOT, "UF2 block %d: %s", block, reason));
    this.block = block;
    this.reason = reason;
  }

  /** The block with the fault, from 0, as it lies in the file. */
  public int block() {
    return block;
  }

  /** What is wrong with it. */
  public String reason() {
    return reason;
  }
}
