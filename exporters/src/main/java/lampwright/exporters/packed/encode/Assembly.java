package lampwright.exporters.packed.encode;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;

/**
 * Packed data being put together: equal pieces once, and places as offsets until it is known where
 * the tables are, from which places count back.
 */
final class Assembly {
  final int placeBytes;
  final ByteSink bytes = new ByteSink();
  private final Map<Piece, Integer> placed = new HashMap<>();
  private final List<Integer> places = new ArrayList<>();

  /** Bytes and where places are among them, which are other bytes in the end. */
  private record Piece(ByteBuffer bytes, List<Integer> inside) {}

  Assembly(int placeBytes) {
    this.placeBytes = placeBytes;
  }

  /**
   * Puts a piece in place; gives its offset.
   *
   * @param inside where places are in the piece, as offsets
   */
  int place(byte[] piece, List<Integer> inside) {
    Piece key = new Piece(ByteBuffer.wrap(piece), List.copyOf(inside));
    Integer known = placed.get(key);
    if (known != null) {
      return known;
    }
    int at = bytes.size();
    placed.put(key, at);
    bytes.all(piece);
    inside.forEach(place -> places.add(at + place));
    return at;
  }

  /** Puts a section and its waves in place; gives the section's offset. */
  int section(Section section) {
    byte[] piece = section.bytes();
    List<Integer> inside = new ArrayList<>();
    for (Section.WaveRef ref : section.waves()) {
      int at = place(ref.wave(), List.of());
      for (int i = 0; i < placeBytes; i++) {
        piece[ref.at() + i] = (byte) (at >> (8 * i));
      }
      inside.add(ref.at());
    }
    return place(piece, inside);
  }

  /** Adds the tables, turns offsets into places, and signs the whole. */
  byte[] finish(byte[] tables, List<Integer> inside) {
    int start = bytes.size();
    bytes.all(tables);
    inside.forEach(place -> places.add(start + place));
    byte[] whole = bytes.toBytes();
    for (int place : places) {
      int offset = 0;
      for (int i = placeBytes - 1; i >= 0; i--) {
        offset = (offset << 8) | (whole[place + i] & 255);
      }
      bytes.set(place, start - offset, placeBytes);
    }
    bytes.set(Format.SIZE_AT, bytes.size(), placeBytes);
    bytes.set(Format.SIZE_AT + placeBytes, start, placeBytes);
    bytes.set(Format.CRC_AT, Format.checksum(bytes.toBytes()), 4);
    return bytes.toBytes();
  }
}
