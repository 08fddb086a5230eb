package lampwright.exporters.packed;

import java.util.List;

/** One coded section: its bytes, with holes where the places of its waves will stand. */
final class Section {
  private final byte[] bytes;
  private final List<WaveRef> waves;

  Section(byte[] bytes, List<WaveRef> waves) {
    this.bytes = bytes;
    this.waves = List.copyOf(waves);
  }

  byte[] bytes() {
    return bytes.clone();
  }

  List<WaveRef> waves() {
    return waves;
  }

  /** A hole for a place: where in the section it is, and the wave that belongs there. */
  static final class WaveRef {
    private final int at;
    private final byte[] wave;

    WaveRef(int at, byte[] wave) {
      this.at = at;
      this.wave = wave;
    }

    int at() {
      return at;
    }

    byte[] wave() {
      return wave.clone();
    }
  }
}
