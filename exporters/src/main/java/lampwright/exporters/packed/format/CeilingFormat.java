package lampwright.exporters.packed.format;

/**
 * The byte layout of the ceiling that ends packed data, shared by packer and decoder. Numbers are
 * little endian. It is found from the end, so that players need not read the show to find it.
 *
 * <pre>
 *   ceiling   limit (4) | run ... | bytes of the whole ceiling (2)
 *   run       columns (2), 1 or more | period (1), 1 or more | period x weight (2)
 * </pre>
 *
 * The runs follow one another from the first column of the frame to its last; in a run the weights
 * come round.
 */
public final class CeilingFormat {
  public static final int LIMIT_BYTES = 4;
  public static final int RUN_HEAD_BYTES = 3;
  public static final int WEIGHT_BYTES = 2;
  public static final int SIZE_BYTES = 2;

  private CeilingFormat() {}
}
