package lampwright.exporters.packed;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A second decoder of packed light, written from the format's text alone; it shares no code with
 * the packer and the first decoder, and works another way: it makes whole frame tables.
 */
public final class SecondReader {
  private final byte[] file;
  private final boolean wideColumns;
  private final boolean widePlaces;
  private final int frameBytes;
  private final int lamps;
  private final int tables;

  public SecondReader(byte[] file) {
    this.file = file;
    int flags = file[7];
    wideColumns = (flags & 1) == 1;
    widePlaces = ((flags >> 1) & 1) == 1;
    DataInput in = at(8);
    frameBytes = in.u16();
    lamps = in.u8();
    in.u8();
    if (in.number() != file.length) {
      throw new IllegalStateException("size");
    }
    if (crcOfRest() != Integer.toUnsignedLong(at(2).u16() | (at(4).u16() << 16))) {
      throw new IllegalStateException("checksum");
    }
    tables = in.number();
  }

  private long crcOfRest() {
    long crc = 0xFFFFFFFFL;
    for (int i = 6; i < file.length; i++) {
      crc ^= file[i] & 0xFF;
      for (int k = 0; k < 8; k++) {
        crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320L : crc >> 1;
      }
    }
    return crc ^ 0xFFFFFFFFL;
  }

  /** The frame table of a scene, and so many frames more. */
  public List<int[]> play(int scene, int more) {
    int placeBytes = widePlaces ? 3 : 2;
    int lampBytes = (wideColumns ? 2 : 1) + placeBytes;
    DataInput table = at(tables + lamps * lampBytes + scene * (6 + lamps * placeBytes));
    int frames = table.u24() + more;
    table.u24();
    List<int[]> rows = new ArrayList<>();
    for (int f = 0; f < frames; f++) {
      rows.add(new int[frameBytes]);
    }
    for (int lamp = 0; lamp < lamps; lamp++) {
      DataInput own = at(tables + lamp * lampBytes);
      int base = own.column();
      int dark = own.number();
      int program = table.number();
      if (program != 0) {
        int[] light = new int[frameBytes];
        boolean[] touched = new boolean[frameBytes];
        Track track = new Track(base, light, touched, rows);
        track.dark(dark);
        track.program(tables - program);
      }
    }
    return rows;
  }

  /** One lamp, playing into the rows. */
  private final class Track {
    private final int base;
    private final int[] light;
    private final boolean[] touched;
    private final List<int[]> rows;
    private int frame;

    Track(int base, int[] light, boolean[] touched, List<int[]> rows) {
      this.base = base;
      this.light = light;
      this.touched = touched;
      this.rows = rows;
    }

    private void put(int column, int value) {
      light[base + column] = value & 0xFF;
      touched[base + column] = true;
    }

    void dark(int dark) {
      int counts = widePlaces ? 0xFFFF00 : 0xFF00;
      if (dark == 0) {
        for (int c = base; c < frameBytes; c++) {
          put(c - base, 0);
        }
      } else if (dark >= counts) {
        for (int c = 0; c <= dark - counts; c++) {
          put(c, 0);
        }
      } else {
        list(at(tables - dark));
      }
    }

    private boolean show() {
      if (frame < rows.size()) {
        int[] row = rows.get(frame);
        for (int c = 0; c < row.length; c++) {
          if (touched[c]) {
            row[c] = light[c];
          }
        }
      }
      return ++frame >= rows.size();
    }

    private boolean patch(int op, DataInput in) {
      if (op >= 0x80 && op <= 0xBF) {
        int column = in.column();
        for (int i = 0; i < op - 0x7F; i++) {
          put(column + i, in.u8());
        }
        return true;
      }
      if (op >= 0xC0 && op <= 0xDF) {
        int column = in.column();
        int count = in.u8() + 1;
        int[] bytes = new int[op - 0xBF];
        for (int i = 0; i < bytes.length; i++) {
          bytes[i] = in.u8();
        }
        for (int i = 0; i < count; i++) {
          put(column + i, bytes[i % bytes.length]);
        }
        return true;
      }
      return false;
    }

    void list(DataInput in) {
      int op = in.u8();
      while (patch(op, in)) {
        op = in.u8();
      }
      if (op != 0xE2) {
        throw new IllegalStateException("GO missing");
      }
    }

    void program(int place) {
      DataInput entries = at(place);
      list(entries);
      int position = entries.position();
      while (frame < rows.size()) {
        DataInput entry = at(position);
        int high = entry.u8();
        if (high == 0x80) {
          while (!show()) {}
          return;
        }
        if (high == 0x81) {
          position -= entry.number();
        } else {
          int frames = high * 256 + entry.u8();
          section(entry.place(), frames);
          position = entry.position();
        }
      }
    }

    private void section(int place, int frames) {
      DataInput head = at(place);
      int kind = head.u8();
      int skip = (kind & 8) != 0 ? head.u16() : head.u8();
      int start = head.position() + skip;
      if ((kind & 3) == 3) {
        int from = head.position();
        for (int f = 0; f < frames; f++) {
          for (int c = 0; c < skip; c++) {
            put(c, at(from++).u8());
          }
          show();
        }
      } else if ((kind & 3) == 2) {
        list(at(start));
        int size = head.u16();
        int pace = head.u16();
        int swing = (kind & 16) != 0 ? head.u16() : size;
        int from = head.position();
        int shared = 0;
        for (int f = 0; f < frames; f++) {
          DataInput groups = at(from);
          for (int g = groups.u8(); g > 0; g--) {
            wave(groups, shared, size, shared < swing ? 1 : -1);
          }
          echo(groups);
          shared = (shared + pace) % size;
          show();
        }
      } else {
        rows(kind, head.position(), start, frames);
      }
    }

    private void wave(DataInput in, int shared, int size, int way) {
      DataInput wave = at(in.place());
      int mirror = wave.u8();
      int first = wave.u16();
      int last = wave.u16();
      int samples = wave.position();
      int column = in.column();
      int slots = in.u8();
      int stride = slots == 1 ? 0 : in.s8();
      int phase = in.u16();
      int step = slots == 1 ? 0 : in.u16();
      for (int k = 0; k < slots; k++) {
        int q = (int) Math.floorMod(shared + phase + (long) k * step * way, (long) size);
        int i = q;
        if (mirror == 1) {
          i = Math.min(q, size - q);
        } else if (mirror == 2) {
          i = Math.min(q, size - 1 - q);
        }
        put(column + k * stride, at(samples + Math.min(last, Math.max(0, i - first))).u8());
      }
    }

    private void rows(int kind, int head, int start, int frames) {
      DataInput in = at(start);
      int shown = 0;
      while (shown < frames) {
        int op = in.u8();
        if (op <= 0x7F) {
          for (int i = 0; i <= op && shown < frames; i++, shown++) {
            show();
          }
        } else if (op == 0xE1) {
          in = at(start);
        } else if (op == 0xE0) {
          int count = in.u8();
          Bits bits = new Bits(in);
          for (int i = 0; i < count && shown < frames; i++, shown++) {
            row(kind, at(head), in, bits);
            show();
          }
        } else if (!patch(op, in)) {
          throw new IllegalStateException("instruction " + op);
        }
      }
    }

    private void row(int kind, DataInput head, DataInput in, Bits bits) {
      if ((kind & 4) != 0 && bits.take(1) == 0) {
        return;
      }
      for (int g = head.u8(); g > 0; g--) {
        int column = head.column();
        int slots = head.u8();
        int stride = slots == 1 ? 0 : head.s8();
        for (int k = 0; k < slots; k++) {
          int c = column + k * stride;
          if ((kind & 3) == 1) {
            put(c, in.u8());
          } else {
            int rule = head.u8();
            int value = head.u8() + bits.take(rule & 15);
            if (rule >> 4 == 1) {
              value += light[base + c];
            } else if (rule >> 4 == 2) {
              int source = light[base + head.column()];
              value += source * head.u8() / 256;
            }
            put(c, value);
          }
        }
      }
      echo(head);
    }

    private void echo(DataInput in) {
      for (int n = in.u8(); n > 0; n--) {
        int first = in.column();
        int source = in.column();
        int count = in.u8();
        int stride = count == 1 ? 0 : in.s8();
        for (int i = 0; i < count; i++) {
          put(first + i * stride, light[base + source + i * stride]);
        }
      }
    }
  }

  /** Bits of a ROWS instruction. */
  private static final class Bits {
    private final DataInput in;
    private int have;
    private int held;

    Bits(DataInput in) {
      this.in = in;
    }

    int take(int width) {
      int value = 0;
      for (int i = 0; i < width; i++) {
        if (have == 0) {
          held = in.u8();
          have = 8;
        }
        have--;
        value = value * 2 + (held >> have) % 2;
      }
      return value;
    }
  }

  private DataInput at(int position) {
    return new DataInput(position);
  }

  /** Numbers from a place on. */
  private final class DataInput {
    private final ByteArrayInputStream bytes;
    private final DataInputStream in;

    DataInput(int position) {
      bytes = new ByteArrayInputStream(file, position, file.length - position);
      in = new DataInputStream(bytes);
    }

    int position() {
      return file.length - bytes.available();
    }

    int u8() {
      try {
        return in.readUnsignedByte();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    int s8() {
      return (byte) u8();
    }

    int u16() {
      return u8() + 256 * u8();
    }

    int u24() {
      return u16() + 65536 * u8();
    }

    int column() {
      return wideColumns ? u16() : u8();
    }

    /** As wide as a place. */
    int number() {
      return widePlaces ? u24() : u16();
    }

    /** The byte that a place leads to. */
    int place() {
      return tables - number();
    }
  }
}
