package lampwright.exporters.packed.play;

import lampwright.exporters.packed.format.Format;

/**
 * A section's head.
 *
 * @param kind {@link Format#STEPS}, RAW, WAVE or PLAIN
 * @param flags the whole first byte
 * @param skip bytes from the body to the instructions; of a row if plain
 * @param body place after it
 */
record SectionHead(int kind, int flags, int skip, int body) {
  static SectionHead at(int section, PackedBytes data) {
    int kind = data.u8(section);
    int bytes = (kind & Format.LONG_SKIP) != 0 ? 2 : 1;
    int own =
        switch (kind & Format.KIND_MASK) {
          case Format.STEPS -> Format.FLAGGED;
          case Format.WAVE -> Format.SWINGS;
          default -> 0;
        };
    if ((kind & ~(Format.KIND_MASK | Format.LONG_SKIP | own)) != 0) {
      throw PackedBytes.badContents(section);
    }
    return new SectionHead(
        kind & Format.KIND_MASK, kind, data.number(section + 1, bytes), section + 1 + bytes);
  }

  boolean flagged() {
    return (flags & Format.FLAGGED) != 0;
  }

  boolean swings() {
    return (flags & Format.SWINGS) != 0;
  }

  boolean plain() {
    return kind == Format.PLAIN;
  }

  boolean wave() {
    return kind == Format.WAVE;
  }

  int instructions() {
    return body + skip;
  }
}
