package lampwright.engine.render;

import java.util.Arrays;
import lampwright.engine.light.Mixer;

/**
 * The light of one frame: the drives of every package, and by how much those of each may be off
 * from what DESIGN's arithmetic gives. Errors add up, since no blend, warm-up or cap makes more of
 * errors than their sum.
 */
final class Light {
  /** Each blend, warm-up or cap rounds by less, on numbers up to 1. */
  private static final double ROUNDING = 0x1p-50;

  // The caps, the product with the steps of a byte, and the half that is added.
  private static final int LAST_STEPS = 4;
  private static final double STEPS_OF_A_BYTE = 256;

  private final double[] drives;
  private final double[] errors;
  private final double[] tolerances;
  // Runs of packages that were laid since the bytes were written last: first, and behind the last.
  private final int[] laid;
  private int laidCount;
  private boolean allLaid = true;
  private boolean exact;
  private boolean anyErrors;
  private int steps;

  /**
   * @param packages how many the rig has
   */
  Light(int packages) {
    this.drives = new double[packages * Mixer.SLOTS];
    this.errors = new double[packages];
    this.tolerances = new double[packages];
    this.laid = new int[packages + 2];
  }

  /**
   * Begins a frame: nothing is off. Drives stay as they are.
   *
   * @param exact whether nothing may be off
   */
  void begin(boolean exact) {
    if (anyErrors) {
      Arrays.fill(errors, 0);
      Arrays.fill(tolerances, 0);
    }
    this.exact = exact;
    anyErrors = false;
    steps = 0;
  }

  /** Whether nothing may be off. */
  boolean isExact() {
    return exact;
  }

  /** {@link Mixer#SLOTS} drives of a package. */
  double[] drives() {
    return drives;
  }

  /** Makes packages dark, to be laid anew. */
  void darken(int from, int to) {
    Arrays.fill(drives, from * Mixer.SLOTS, to * Mixer.SLOTS, 0);
    if (laidCount + 2 > laid.length) {
      allLaid = true;
    } else {
      laid[laidCount++] = from;
      laid[laidCount++] = to;
    }
  }

  /** Makes all packages dark. */
  void darken() {
    Arrays.fill(drives, 0);
    allLaid = true;
  }

  /** Whether all packages may have been laid since the bytes were written last. */
  boolean isAllLaid() {
    return allLaid;
  }

  /** Runs of packages that were, if not all: of each the first, and the one behind the last. */
  int[] laid() {
    return laid;
  }

  /** How many numbers of {@link #laid} count. */
  int laidCount() {
    return laidCount;
  }

  /** Hears that the bytes of all that was laid are written. */
  void written() {
    laidCount = 0;
    allLaid = false;
  }

  /** Counts steps that may each round every drive once more. */
  void addSteps(int more) {
    steps += more;
  }

  /** By how much the drives of a package may be off, but for the rounding of later steps. */
  double error(int at) {
    return errors[at];
  }

  /** Makes the drives of a package be off by more. */
  void addError(int at, double error) {
    errors[at] += error;
    anyErrors = true;
  }

  /**
   * The errors in steps of a byte, with all rounding, by packages: a byte that is no farther from
   * the next one is undecided. 0 where the drives are exact.
   */
  double[] tolerances() {
    if (anyErrors) {
      for (int i = 0; i < errors.length; i++) {
        if (errors[i] > 0) {
          tolerances[i] = STEPS_OF_A_BYTE * (errors[i] + (steps + LAST_STEPS) * ROUNDING);
        }
      }
    }
    return tolerances;
  }
}
