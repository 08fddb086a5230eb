package lampwright.exporters.packed.play;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;
import lampwright.exporters.packed.format.Format;

/**
 * Packed data with a right checksum and contents that break the rules of docs/packed.md, written
 * byte by byte from that text: a lamp or more, a scene or more, one program for all.
 */
final class DamagedData {
  private static final int HEADER_BYTES = 16;

  private final List<Integer> contents = new ArrayList<>();
  private int frameBytes = 8;
  private int frames = 100;
  private int base;
  private int lamps = 1;
  private int scenes = 1;
  private int scenesToldOf = 1;
  private int program;
  private int tablesOff;
  private boolean wideColumns;

  /** Adds bytes to the contents; gives where they begin. */
  private int bytes(int... more) {
    int at = contents.size();
    Arrays.stream(more).forEach(contents::add);
    return at;
  }

  /** A program with an empty list, and the entries given: frames, then place in the contents. */
  private void program(int last, int... framesAndSections) {
    program = bytes(0xE2);
    int size = contents.size() + framesAndSections.length * 2 + (last == 0x81 ? 3 : 1);
    for (int i = 0; i < framesAndSections.length; i += 2) {
      int back = size - framesAndSections[i + 1];
      bytes(framesAndSections[i] >> 8, framesAndSections[i] & 255, back & 255, back >> 8);
    }
    bytes(last);
    if (last == 0x81) {
      int length = framesAndSections.length * 2;
      bytes(length & 255, length >> 8);
    }
  }

  private byte[] file() {
    int tables = HEADER_BYTES + contents.size();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int size = tables + lamps * (wideColumns ? 4 : 3) + scenes * (6 + 2 * lamps);
    for (int b :
        new int[] {
          'L', 'W', 0, 0, 0, 0, 2, wideColumns ? 1 : 0, frameBytes & 255, frameBytes >> 8, lamps
        }) {
      out.write(b);
    }
    out.write(scenesToldOf);
    out.write(size);
    out.write(size >> 8);
    out.write(tables + tablesOff);
    out.write((tables + tablesOff) >> 8);
    contents.forEach(out::write);
    for (int i = 0; i < lamps; i++) {
      out.write(base);
      out.writeBytes(new byte[wideColumns ? 3 : 2]);
    }
    int back = contents.size() - program;
    for (int i = 0; i < scenes; i++) {
      out.writeBytes(new byte[] {(byte) frames, (byte) (frames >> 8), 0, 0x20, 0x4E, (byte) 0x80});
      for (int lamp = 0; lamp < lamps; lamp++) {
        out.write(back);
        out.write(back >> 8);
      }
    }
    return sealed(out.toByteArray());
  }

  /** Makes the checksum right. */
  static byte[] sealed(byte[] data) {
    CRC32 crc = new CRC32();
    crc.update(data, Format.CHECKED_FROM, data.length - Format.CHECKED_FROM);
    for (int i = 0; i < 4; i++) {
      data[Format.CRC_AT + i] = (byte) (crc.getValue() >> (8 * i));
    }
    return data;
  }

  /** Data that breaks no rule, as a check of this class itself. */
  static byte[] whole() {
    DamagedData d = new DamagedData();
    d.program(0x81, 100, d.bytes(0, 0, 0x81, 0, 1, 2, 0x3F, 0xE1));
    return d.file();
  }

  /** All cases by name. */
  static Map<String, byte[]> all() {
    Map<String, byte[]> all = new LinkedHashMap<>();
    all.put("patch whose bytes lie in the tables", lastBytes(0xBF));
    all.put("patch whose column lies in the tables", lastBytes(0x80));
    all.put("fill whose bytes lie in the tables", lastBytes(0xDF, 0, 31));
    all.put("rows whose count lies in the tables", lastBytes(0xE0));
    all.put("flagged rows without bytes", rowsWithoutBytes(4, 0, 0));
    all.put("rows of bits without bytes", rowsWithoutBytes(0, 1, 0, 1, 8, 0, 0));
    all.put("raw rows without bytes", rowsWithoutBytes(1, 1, 0, 8, 1, 0));
    all.put("plain rows that lie behind the tables", plainAtTheEnd());
    all.put("run that leaves a frame of 60,000 bytes", longFrame(60000, 60000 - 256, 127));
    all.put("run that leaves a frame of 40,000 bytes before its start", longFrame(40000, 9, -128));
    all.put("column that passes 65,535 bytes", longFrame(60000, 65534, 1));
    all.put("entries of no frames", entries(0x81, 0, 0));
    all.put("entry of too many frames", entries(0x81, 4097));
    all.put("program that goes back to its end", entries(0x81));
    all.put("section in the header", sectionInHeader());
    all.put("wave of no phases", wave(0, 0, 0, 0, 0));
    all.put("wave of 32,768 phases", wave(0x8000, 0, 0, 0, 0));
    all.put("wave whose pace is not less than its size", wave(10, 10, 0, 0, 0));
    all.put("wave whose phase is not less than its size", wave(10, 1, 10, 0, 0));
    all.put("wave whose step is not less than its size", wave(10, 1, 0, 10, 0));
    all.put("wave of an unknown kind", wave(10, 1, 0, 1, 3));
    all.put("rule of nine bits", rule(0x09));
    all.put("rule of two kinds", rule(0x38));
    all.put("rule of no kind", rule(0x48));
    all.put("section of no kind", kind(0x20));
    all.put("flagged wave", kind(0x06));
    all.put("rows that swing", kind(0x10));
    all.put("list without an end", listWithoutEnd());
    DamagedData d = new DamagedData();
    d.tablesOff = -20;
    d.program(0x80);
    all.put("tables in the header", d.file());
    d.tablesOff = 1;
    all.put("tables that pass the end", d.file());
    d.tablesOff = -1;
    all.put("tables that do not end the data", d.file());
    all.put("more scenes than bytes", manyScenes());
    d = new DamagedData();
    d.program(0x80);
    d.frames = 0;
    all.put("scene of no frames", d.file());
    d.frames = 1;
    d.scenes = 0;
    d.scenesToldOf = 0;
    d.bytes(0, 0, 0, 0, 0, 0, 0, 0);
    all.put("no scenes", d.file());
    return all;
  }

  /** An instruction that ends with the contents; the program before it. */
  private static byte[] lastBytes(int... last) {
    DamagedData d = new DamagedData();
    d.frameBytes = 250;
    d.program = d.bytes(0xE2);
    d.bytes(0, 10, 2 + last.length, 0, 0x80);
    d.bytes(0, 0);
    d.bytes(last);
    return d.file();
  }

  private static byte[] rowsWithoutBytes(int kind, int... head) {
    DamagedData d = new DamagedData();
    d.program = d.bytes(0xE2);
    d.bytes(0, 200, 4 + head.length, 0, 0x80);
    d.bytes(kind, head.length);
    d.bytes(head);
    d.bytes(0xE0, 200);
    return d.file();
  }

  private static byte[] plainAtTheEnd() {
    DamagedData d = new DamagedData();
    d.frameBytes = 60000;
    d.wideColumns = true;
    // A row has as many bytes as the two after its kind say, which are the lamp's base.
    d.base = 100;
    d.program = d.bytes(0xE2);
    d.bytes(0, 2, 1, 0, 0x80);
    d.bytes(0x0B);
    return d.file();
  }

  private static byte[] longFrame(int frameBytes, int first, int stride) {
    DamagedData d = new DamagedData();
    d.frameBytes = frameBytes;
    d.wideColumns = true;
    int section = d.bytes(1, 6, 1, first & 255, first >> 8, 255, stride & 255, 0, 0xE0, 1);
    d.bytes(new int[255]);
    d.bytes(0xE1);
    d.program(0x80, 1, section);
    return d.file();
  }

  private static byte[] entries(int last, int... frames) {
    DamagedData d = new DamagedData();
    int section = d.bytes(0, 0, 0x7F, 0xE1);
    int[] entries = new int[2 * frames.length];
    for (int i = 0; i < frames.length; i++) {
      entries[2 * i] = frames[i];
      entries[2 * i + 1] = section;
    }
    d.program(last, entries);
    return d.file();
  }

  private static byte[] sectionInHeader() {
    DamagedData d = new DamagedData();
    d.program(0x80, 5, -9);
    return d.file();
  }

  private static byte[] wave(int size, int pace, int phase, int step, int kind) {
    DamagedData d = new DamagedData();
    int shape = d.bytes(kind, 0, 0, 3, 0, 10, 20, 30, 40);
    // Size 2, pace 2, groups 1, wave 2, run 3, phase 2, step 2, echoes 1.
    int section = d.bytes(2, 15, size & 255, size >> 8, pace, 0, 1);
    int place = d.bytes(0, 0, 0, 4, 1, phase, 0, step, 0, 0, 0xE2);
    d.program(0x80, 50, section);
    int back = d.contents.size() - shape;
    d.contents.set(place, back);
    return d.file();
  }

  private static byte[] rule(int rule) {
    DamagedData d = new DamagedData();
    int section = d.bytes(0, 6, 1, 0, 1, rule, 0, 0, 0xE0, 4, 1, 2, 3, 4, 5, 6, 7, 8, 0xE1);
    d.program(0x80, 4, section);
    return d.file();
  }

  private static byte[] kind(int kind) {
    DamagedData d = new DamagedData();
    int section = d.bytes(kind, 5, 1, 0, 1, 0, 0, 0xE0, 4, 1, 2, 3, 4, 0xE1);
    d.program(0x80, 4, section);
    return d.file();
  }

  private static byte[] listWithoutEnd() {
    DamagedData d = new DamagedData();
    int section = d.bytes(0, 0, 0x7F, 0xE1);
    d.program(0x80, 4, section);
    d.contents.set(d.program, 0x05);
    return d.file();
  }

  /** As many scenes as make the tables 65,536 bytes longer than they are. */
  private static byte[] manyScenes() {
    DamagedData d = new DamagedData();
    d.lamps = 253;
    d.program(0x80);
    d.scenesToldOf = d.scenes + 65536 / (6 + 2 * d.lamps);
    return d.file();
  }
}
