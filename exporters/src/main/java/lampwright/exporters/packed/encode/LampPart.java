package lampwright.exporters.packed.encode;

import java.util.Arrays;

/** One lamp in one scene, coded. */
final class LampPart {
  private final byte[] setup;
  private final Score score;

  LampPart(byte[] setup, Score score) {
    this.setup = setup.clone();
    this.score = score;
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
