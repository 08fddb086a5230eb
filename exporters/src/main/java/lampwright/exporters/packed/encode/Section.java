package lampwright.exporters.packed.encode;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;

/** One coded section: its bytes, with holes where the places of its waves will be. */
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

  int length() {
    return bytes.length;
  }

  /** The bytes for comparison, not to be changed. */
  ByteBuffer view() {
    return ByteBuffer.wrap(bytes).asReadOnlyBuffer();
  }

  List<WaveRef> waves() {
    return waves;
  }

  /** Whether another section has the same bytes and waves. */
  boolean sameAs(Section other) {
    if (!Arrays.equals(bytes, other.bytes) || waves.size() != other.waves.size()) {
      return false;
    }
    for (int i = 0; i < waves.size(); i++) {
      if (!Arrays.equals(waves.get(i).wave, other.waves.get(i).wave)) {
        return false;
      }
    }
    return true;
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

    /** The wave's bytes for comparison. */
    ByteBuffer view() {
      return ByteBuffer.wrap(wave).asReadOnlyBuffer();
    }
  }
}
