package lampwright.exporters.packed.encode;

import com.google.common.primitives.ImmutableIntArray;
import java.util.Arrays;

/** One lamp in one scene, coded. */
final class LampPart {
  private final byte[] setup;
  private final Score score;
  private final ImmutableIntArray pieces;

  LampPart(byte[] setup, Score score) {
    this(setup, score, ImmutableIntArray.of());
  }

  /**
   * Codes a lamp in pieces.
   *
   * @param pieces where pieces begin that are coded each for itself, ascending from frame 0, and
   *     where the last ends; nothing if the lamp is one piece
   */
  LampPart(byte[] setup, Score score, ImmutableIntArray pieces) {
    this.setup = setup.clone();
    this.score = score;
    this.pieces = pieces;
  }

  /** The number of the piece that a frame is in, which may be one of a later round. */
  int pieceAt(int frame) {
    if (pieces.isEmpty()) {
      return 0;
    }
    int inRound = frame % pieces.get(pieces.length() - 1);
    int piece = 0;
    while (pieces.get(piece + 1) <= inRound) {
      piece++;
    }
    return piece;
  }

  /** Whether the lamp is dark all the time. */
  boolean dark() {
    return score.entries().isEmpty() && setup.length == 0;
  }

  byte[] setup() {
    return setup.clone();
  }

  Score score() {
    return score;
  }

  /** Whether another part makes the same bytes, so that packed data holds them once. */
  boolean sameAs(LampPart other) {
    if (!Arrays.equals(setup, other.setup)
        || score.entries().size() != other.score.entries().size()) {
      return false;
    }
    for (int i = 0; i < score.entries().size(); i++) {
      Score.Entry a = score.entries().get(i);
      Score.Entry b = other.score.entries().get(i);
      if (a.frames() != b.frames() || !a.section().sameAs(b.section())) {
        return false;
      }
    }
    return true;
  }
}
