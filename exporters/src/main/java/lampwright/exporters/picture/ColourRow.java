package lampwright.exporters.picture;

/**
 * Colours side by side. Two of them are equal only if they are one and the same, so that whoever
 * paints them can keep what was made of them.
 */
public final class ColourRow {
  private final int[] argb;

  /**
   * @param argb from the left, 0 where there is nothing
   */
  public ColourRow(int... argb) {
    this.argb = argb.clone();
  }

  public int size() {
    return argb.length;
  }

  /** The colour at an index from the left. */
  public int argb(int index) {
    return argb[index];
  }

  /** All of them, from the left. */
  public int[] toArray() {
    return argb.clone();
  }
}
