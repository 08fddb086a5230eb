package lampwright.exporters.packed.play;

import com.google.common.primitives.Bytes;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;

/**
 * A small show with a ceiling, written byte by byte from docs/packed.md behind {@link
 * DamagedData#whole}, and what breaks one rule of it by one byte. Channel 0 lights the only lamp,
 * two frames after it reads more than 1,600 us and until three after that.
 */
final class DamagedShow {
  /** A byte of the data by what it is, and what may not be there. */
  private record Break(String of, int value) {}

  private static final List<Break> SEEN_BY_ALL =
      List.of(
          new Break("T", 0),
          new Break("T", 3),
          new Break("T", 5),
          new Break("T", 255),
          new Break("inputs", 255),
          new Break("centres", 65),
          new Break("situations", 255),
          new Break("slots", 255),
          new Break("scene", 1),
          new Break("conditions", 255),
          new Break("width", 6),
          new Break("width", 0x3F),
          new Break("width", 0x41),
          new Break("width's input", 3),
          new Break("taps' input", 3),
          new Break("taps' slot", 7),
          new Break("taps' count", 7),
          new Break("slot of after", 7),
          new Break("slot of linger", 7),
          new Break("slot of the clock", 7),
          new Break("slot of asked", 7),
          new Break("active", 0x42),
          new Break("active's situation", 1),
          new Break("ended", 0x45),
          new Break("ended's situation", 1),
          new Break("ended's slot", 7),
          new Break("lost", 0x40),
          new Break("lost's input", 3),
          new Break("situations of the lamp", 255),
          new Break("situation of the lamp", 2),
          new Break("columns", 0),
          new Break("columns", 7),
          new Break("columns", 9),
          new Break("period", 0),
          new Break("period", 3),
          new Break("period", 255),
          new Break("bytes of the ceiling", 0),
          new Break("bytes of the ceiling", 5),
          new Break("bytes of the ceiling", 14),
          new Break("high byte of the ceiling's bytes", 255));

  /** What only a player that reads all of it beforehand can see, or need see. */
  private static final List<Break> SEEN_BY_THE_DECODER =
      List.of(
          new Break("centres", 0),
          new Break("slots", 6),
          new Break("memory", 0),
          new Break("channel", 4),
          new Break("learns", 5),
          new Break("switch", 6),
          new Break("scene", 255),
          new Break("clock", 1),
          new Break("clock", 255),
          new Break("no clock", 0),
          new Break("flags", 93 + 128),
          new Break("flags", 93 + 2),
          new Break("high byte of from", 0x4F),
          new Break("high byte of from", 0xB1),
          new Break("high byte of to", 0x4F),
          new Break("high byte of more", 0x4F),
          new Break("last", 100),
          new Break("situation of the lamp", 1));

  private final ByteSink bytes = new ByteSink();
  private final Map<String, Integer> places = new LinkedHashMap<>();

  private DamagedShow() {
    byte[] scenes = DamagedData.whole();
    bytes.all(scenes);
    u8("T", 2).u8("inputs", 3).u8("centres", 1);
    u8("situations", 2).u8("slots", 7).u8("memory", 1);
    u8("channel", 0).u16("lost after", 10);
    u8("learns", 1).u16("lost after", 10);
    u8("switch", 3).u16("never lost", 0);
    u8("scene", 0).u8("clock", 0);
    u8("no scene", 255).u8("no clock", 255);
    // ANY, AFTER, LINGERS, CLOCK and ASKED.
    u8("flags", 1 + 4 + 8 + 16 + 64).u8("conditions", 2);
    u8("width", 1).u8("width's input", 0);
    u16("from", 1600).u16("to", 2200).u16("more", 20);
    u8("taps", 0x83).u8("taps' input", 2).u8("taps' slot", 4).u16("longest", 3);
    u8("taps' count", 5).u16("pause", 4).u8("so many taps", 2);
    u8("slot of after", 1).u16("after", 2).u8("slot of linger", 2).u16("linger", 3);
    u8("slot of the clock", 0).u16("last", 99).u8("slot of asked", 6).u16("asked", 50);
    u8("flags of the second", 0).u8("conditions of the second", 3);
    u8("active", 0x44).u8("active's situation", 0);
    u8("ended", 5).u8("ended's situation", 0).u8("ended's slot", 6).u16("least", 10);
    u8("lost", 2).u8("lost's input", 1);
    u8("situations of the lamp", 1).u8("situation of the lamp", 0);
    int ceiling = bytes.size();
    bytes.number(150, 4);
    u16("columns", 8).u8("period", 2);
    bytes.u16(100).u16(50);
    u8("bytes of the ceiling", bytes.size() + 2 - ceiling);
    u8("high byte of the ceiling's bytes", 0);
  }

  private DamagedShow u8(String what, int value) {
    places.put(what, bytes.size());
    bytes.u8(value);
    return this;
  }

  private DamagedShow u16(String what, int value) {
    return u8(what, value).u8("high byte of " + what, value >> 8);
  }

  private byte[] file() {
    byte[] data = bytes.toBytes();
    data[Format.FLAGS_AT] |= Format.SHOW | Format.CEILING;
    data[Format.SIZE_AT] = (byte) data.length;
    data[Format.SIZE_AT + 1] = (byte) (data.length >> 8);
    return DamagedData.sealed(data);
  }

  /** Breaks no rule. */
  static byte[] whole() {
    return new DamagedShow().file();
  }

  /** With another value of the byte named. */
  static byte[] with(String what, int value) {
    DamagedShow show = new DamagedShow();
    byte[] data = show.file();
    int at = show.places.get(what);
    if (data[at] == (byte) value) {
      throw new IllegalArgumentException(what + " is " + value + " anyway");
    }
    data[at] = (byte) value;
    return DamagedData.sealed(data);
  }

  /** With a byte more than the show has, before the ceiling. */
  static byte[] withByteBehind() {
    DamagedShow show = new DamagedShow();
    byte[] whole = show.file();
    int at = show.places.get("situation of the lamp") + 1;
    byte[] data = Arrays.copyOf(whole, whole.length + 1);
    System.arraycopy(whole, at, data, at + 1, whole.length - at);
    data[Format.SIZE_AT] = (byte) data.length;
    return DamagedData.sealed(data);
  }

  /** With nine conditions that remember, where there is one byte for their bits. */
  static byte[] withMoreToRemember() {
    DamagedShow show = new DamagedShow();
    byte[] whole = show.file();
    int from = show.places.get("taps");
    byte[] taps = Arrays.copyOfRange(whole, from, show.places.get("slot of after"));
    byte[][] parts = new byte[9][];
    Arrays.fill(parts, taps);
    parts[0] = Arrays.copyOf(whole, from);
    parts[8] = Arrays.copyOfRange(whole, from, whole.length);
    byte[] data = Bytes.concat(parts);
    data[show.places.get("conditions")] = 9;
    data[Format.SIZE_AT] = (byte) data.length;
    data[Format.SIZE_AT + 1] = (byte) (data.length >> 8);
    return DamagedData.sealed(data);
  }

  /**
   * A show of nothing, and a ceiling whose columns all have the greatest weight: 65,535 times 257
   * times 255 is less than 2^32, and times 258 more.
   */
  static byte[] heaviest(int columns) {
    ByteSink out = new ByteSink();
    out.u8('L').u8('W').number(0, 4).u8(2);
    out.u8(Format.WIDE_COLUMNS | Format.SHOW | Format.CEILING).u16(columns).u8(1).u8(1);
    out.u16(46).u16(16);
    out.u16(0).u16(0).u24(1).u24(20_000).u16(0);
    out.u8(2).u8(0).u8(0).u8(0).u8(0).u8(0).u8(0);
    out.number(1000, 4).u16(columns).u8(1).u16(65_535).u16(11);
    return DamagedData.sealed(out.toBytes());
  }

  /** What every player refuses, by name. */
  static Map<String, byte[]> seenByAll() {
    Map<String, byte[]> all = all(SEEN_BY_ALL);
    all.put("more to remember than memory", withMoreToRemember());
    return all;
  }

  /** What the decoder alone refuses, by name. */
  static Map<String, byte[]> seenByTheDecoder() {
    Map<String, byte[]> all = all(SEEN_BY_THE_DECODER);
    all.put("a byte behind the show", withByteBehind());
    return all;
  }

  private static Map<String, byte[]> all(List<Break> breaks) {
    Map<String, byte[]> all = new LinkedHashMap<>();
    for (Break one : breaks) {
      all.put(one.of() + " = " + one.value(), with(one.of(), one.value()));
    }
    return all;
  }
}
