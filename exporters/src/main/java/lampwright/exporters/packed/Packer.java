package lampwright.exporters.packed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;

/** Packs the scenes of one rig into one piece of data, and proves it by decoding. */
public final class Packer {
  /** Largest frame table of one scene that is packed, in bytes. */
  public static final long MAX_TABLE_BYTES = 64L << 20;

  /** Most scenes. */
  public static final int MAX_SCENES = 255;

  /**
   * Bytes by which packed data may be longer than the frame tables before all lamps are merged into
   * one, which can't be played apart.
   */
  private static final int SPARE = 64;

  private static final double CODING_SHARE = 0.9;

  private Packer() {}

  /**
   * Packs scenes.
   *
   * @param layout the rig's bytes
   * @param scenes the scenes, 1 to {@value #MAX_SCENES}
   * @param progress told how far packing is
   * @return the packed data; the same input gives the same bytes. Where lamps take so much room
   *     that the data would be more than 64 bytes longer than the frame tables, all lamps are
   *     merged into one, which {@link Unpacker#lamps} tells
   * @throws IllegalArgumentException if a table is too large
   * @throws CancellationException if {@code progress} says stop
   */
  public static byte[] pack(PackLayout layout, List<PackScene> scenes, PackProgress progress) {
    Limits.check("scenes", scenes.size(), 1, MAX_SCENES);
    for (PackScene scene : scenes) {
      long bytes = (long) scene.frames() * layout.frameBytes();
      if (bytes > MAX_TABLE_BYTES) {
        throw new IllegalArgumentException(
            String.format(
                "scene %s: %d frames of %d bytes are %d bytes: at most %d can be packed; a shorter"
                    + " scene or a lower frame rate helps",
                scene.id(), scene.frames(), layout.frameBytes(), bytes, MAX_TABLE_BYTES));
      }
    }
    List<int[]> lamps = lampColumns(layout, scenes);
    int columnBytes = layout.frameBytes() > 256 ? 2 : 1;
    byte[] data = fit(layout, lamps, scenes, columnBytes, false, progress);
    long raw = 0;
    for (PackScene scene : scenes) {
      raw += (long) scene.frames() * layout.frameBytes();
    }
    if (data.length > raw + SPARE) {
      List<int[]> one = List.of(IntStream.range(0, layout.frameBytes()).toArray());
      byte[] merged = fit(layout, one, scenes, columnBytes, true, PackProgress.NONE);
      data = merged.length < data.length ? merged : data;
    }
    prove(data, layout, scenes, progress);
    return data;
  }

  /** Packs with short places if that goes. */
  private static byte[] fit(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      int columnBytes,
      boolean merged,
      PackProgress progress) {
    byte[] data = pack(layout, lamps, scenes, new Coding(columnBytes, 2), merged, progress);
    if (data.length > Format.maxSize(2)) {
      Coding wide = new Coding(columnBytes, 3);
      data = pack(layout, lamps, scenes, wide, merged, PackProgress.NONE);
    }
    return data;
  }

  private static byte[] pack(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      Coding coding,
      boolean merged,
      PackProgress progress) {
    List<List<Part>> parts = new ArrayList<>();
    for (int s = 0; s < scenes.size(); s++) {
      parts.add(code(layout, lamps, scenes.get(s), coding, merged, s, scenes.size(), progress));
    }
    return assemble(layout, lamps, scenes, parts, coding, merged);
  }

  /** Columns of each lamp, ascending, and of what belongs to none but shines all the same. */
  private static List<int[]> lampColumns(PackLayout layout, List<PackScene> scenes) {
    List<int[]> lamps = new ArrayList<>();
    boolean[] owned = new boolean[layout.frameBytes()];
    for (PackLayout.LampColumns lamp : layout.lamps()) {
      int[] columns = lamp.columns().stream().mapToInt(Integer::intValue).sorted().toArray();
      for (int column : columns) {
        owned[column] = true;
      }
      lamps.add(columns);
    }
    boolean[] stray = new boolean[owned.length];
    byte[] frame = new byte[owned.length];
    boolean all = true;
    for (boolean b : owned) {
      all &= b;
    }
    for (PackScene scene : scenes) {
      for (int f = 0; !all && f < scene.frames(); f++) {
        scene.source().read(f, frame);
        for (int c = 0; c < frame.length; c++) {
          stray[c] |= !owned[c] && frame[c] != 0;
        }
      }
    }
    int[] rest = new int[stray.length];
    int count = 0;
    for (int c = 0; c < stray.length; c++) {
      if (stray[c]) {
        rest[count++] = c;
      }
    }
    if (count > 0) {
      lamps.add(Arrays.copyOf(rest, count));
    }
    return lamps;
  }

  /** One lamp in one scene, coded. */
  private static final class Part {
    private final boolean dark;
    private final byte[] setup;
    private final Score score;

    Part(boolean dark, byte[] setup, Score score) {
      this.dark = dark;
      this.setup = setup;
      this.score = score;
    }

    boolean dark() {
      return dark;
    }

    byte[] setup() {
      return setup;
    }

    Score score() {
      return score;
    }
  }

  private static List<Part> code(
      PackLayout layout,
      List<int[]> lamps,
      PackScene scene,
      Coding coding,
      boolean merged,
      int number,
      int of,
      PackProgress progress) {
    byte[][] columns = new byte[layout.frameBytes()][scene.frames()];
    byte[] frame = new byte[layout.frameBytes()];
    for (int f = 0; f < scene.frames(); f++) {
      scene.source().read(f, frame);
      for (int c = 0; c < frame.length; c++) {
        columns[c][f] = frame[c];
      }
    }
    List<Part> parts = new ArrayList<>();
    for (int lamp = 0; lamp < lamps.size(); lamp++) {
      report(progress, CODING_SHARE * (number + (double) lamp / lamps.size()) / of);
      int[] absolute = lamps.get(lamp);
      int[] relative = new int[absolute.length];
      byte[][] values = new byte[absolute.length][];
      for (int i = 0; i < relative.length; i++) {
        relative[i] = absolute[i] - absolute[0];
        values[i] = columns[absolute[i]];
      }
      LampTable table = new LampTable(relative, values, scene.frames());
      LampCoder coder = new LampCoder(table, scene.loop(), coding, Speeds.of(scene.periodMicros()));
      Score score = coder.score();
      if (merged) {
        Score plain = PlainCoder.score(table);
        if (plain.size(coding) < score.size(coding) + coder.setup.length) {
          parts.add(new Part(false, new byte[0], plain));
          continue;
        }
      }
      boolean dark = score.entries().isEmpty() && coder.setup.length == 0;
      parts.add(new Part(dark, coder.setup, score));
    }
    return parts;
  }

  private static void report(PackProgress progress, double share) {
    if (!progress.proceed(share)) {
      throw new CancellationException("packing was stopped");
    }
  }

  private static byte[] assemble(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      List<List<Part>> parts,
      Coding coding,
      boolean merged) {
    int placeBytes = coding.placeBytes();
    Assembly out = new Assembly(placeBytes);
    out.bytes.u8(Format.MAGIC_0).u8(Format.MAGIC_1).number(0, 4).u8(Format.VERSION);
    out.bytes.u8(
        (coding.columnBytes() == 2 ? Format.WIDE_COLUMNS : 0)
            | (placeBytes == 3 ? Format.WIDE_PLACES : 0));
    out.bytes.u16(layout.frameBytes()).u8(lamps.size()).u8(scenes.size());
    out.bytes.number(0, placeBytes).number(0, placeBytes);
    ByteSink tables = new ByteSink();
    List<Integer> places = new ArrayList<>();
    for (int[] columns : lamps) {
      tables.number(columns[0], coding.columnBytes());
      int bytes = columns[columns.length - 1] - columns[0] + 1;
      if (merged) {
        tables.number(0, placeBytes);
      } else if (bytes == columns.length && bytes <= Format.MAX_DARK_ROW) {
        tables.number(Format.darkRow(placeBytes) + bytes - 1, placeBytes);
      } else {
        places.add(tables.size());
        tables.number(out.place(darkList(columns, coding), List.of()), placeBytes);
      }
    }
    for (int s = 0; s < scenes.size(); s++) {
      PackScene scene = scenes.get(s);
      tables.u24(scene.frames()).u24(scene.periodMicros() | (scene.loop() ? Format.LOOP : 0));
      for (Part part : parts.get(s)) {
        if (part.dark()) {
          tables.number(0, placeBytes);
        } else {
          places.add(tables.size());
          tables.number(program(out, part, scene), placeBytes);
        }
      }
    }
    byte[] data = out.finish(tables.toBytes(), places);
    if (placeBytes == 3 && data.length > Format.maxSize(placeBytes)) {
      throw new IllegalArgumentException(
          "packed data: "
              + data.length
              + " bytes: at most "
              + Format.maxSize(placeBytes)
              + " can be played");
    }
    return data;
  }

  private static byte[] darkList(int[] columns, Coding coding) {
    int[] relative = Arrays.stream(columns).map(c -> c - columns[0]).toArray();
    LampTable dark = new LampTable(relative, new byte[columns.length][1], 1);
    boolean[] must = new boolean[columns.length];
    Arrays.fill(must, true);
    ByteSink list = new ByteSink();
    new PatchCoder(dark, coding).write(list, dark.row(0), must);
    return list.u8(Format.GO).toBytes();
  }

  /** Puts a program and what it leads to in place; gives the program's offset. */
  private static int program(Assembly out, Part part, PackScene scene) {
    ByteSink program = new ByteSink();
    program.all(part.setup()).u8(Format.GO);
    int first = program.size();
    List<Integer> places = new ArrayList<>();
    for (Score.Entry entry : part.score().entries()) {
      program.u8(entry.frames() >> 8).u8(entry.frames());
      places.add(program.size());
      program.number(out.section(entry.section()), out.placeBytes);
    }
    if (scene.loop() && program.size() > first) {
      int back = program.size() - first;
      program.u8(Format.BACK).number(back, out.placeBytes);
    } else {
      program.u8(Format.REST);
    }
    return out.place(program.toBytes(), places);
  }

  private static void prove(
      byte[] data, PackLayout layout, List<PackScene> scenes, PackProgress progress) {
    Unpacker unpacker = new Unpacker(data);
    byte[] want = new byte[layout.frameBytes()];
    byte[] got = new byte[layout.frameBytes()];
    for (int s = 0; s < scenes.size(); s++) {
      PackScene scene = scenes.get(s);
      unpacker.select(s, got);
      int frames = scene.frames() + 1;
      for (int f = 0; f < frames; f++) {
        if (f % 256 == 0) {
          report(
              progress,
              CODING_SHARE + (1 - CODING_SHARE) * (s + (double) f / frames) / scenes.size());
        }
        int shown = f < scene.frames() ? f : scene.loop() ? 0 : scene.frames() - 1;
        scene.source().read(shown, want);
        unpacker.frame(got);
        if (!Arrays.equals(want, got)) {
          throw new IllegalStateException(
              "scene " + scene.id() + ", frame " + f + ": packed data differs from the table");
        }
      }
    }
    report(progress, 1);
  }
}
