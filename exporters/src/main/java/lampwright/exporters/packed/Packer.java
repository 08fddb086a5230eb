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
    Attempt attempt = fit(layout, lamps, scenes, columnBytes, false, progress);
    long raw = 0;
    for (PackScene scene : scenes) {
      raw += (long) scene.frames() * layout.frameBytes();
    }
    if (attempt.data.length > raw + SPARE) {
      List<int[]> one = List.of(IntStream.range(0, layout.frameBytes()).toArray());
      Attempt merged = fit(layout, one, scenes, columnBytes, true, PackProgress.NONE);
      attempt = merged.data.length < attempt.data.length ? merged : attempt;
    }
    List<Load> loads = prove(attempt.data, layout, scenes, progress);
    byte[] data = new Haste(attempt, loads, layout, scenes, progress).data();
    report(progress, 1);
    return data;
  }

  /** Packs with short places if that goes. */
  private static Attempt fit(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      int columnBytes,
      boolean merged,
      PackProgress progress) {
    Attempt attempt = attempt(layout, lamps, scenes, new Coding(columnBytes, 2), merged, progress);
    if (attempt.data.length > Format.maxSize(2)) {
      Coding wide = new Coding(columnBytes, 3);
      attempt = attempt(layout, lamps, scenes, wide, merged, PackProgress.NONE);
    }
    return attempt;
  }

  private static Attempt attempt(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      Coding coding,
      boolean merged,
      PackProgress progress) {
    List<List<LampPart>> parts = new ArrayList<>();
    for (int s = 0; s < scenes.size(); s++) {
      SceneCoder coder = new SceneCoder(layout, lamps, scenes.get(s), coding, merged);
      List<LampPart> own = new ArrayList<>();
      for (int lamp = 0; lamp < lamps.size(); lamp++) {
        report(progress, CODING_SHARE * (s + (double) lamp / lamps.size()) / scenes.size());
        own.add(coder.part(lamp, 0));
      }
      parts.add(own);
    }
    return new Attempt(layout, lamps, scenes, coding, merged, parts);
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

  private static void report(PackProgress progress, double share) {
    if (!progress.proceed(share)) {
      throw new CancellationException("packing was stopped");
    }
  }

  /** Decodes and compares; gives what the frames of each scene take. */
  static List<Load> prove(
      byte[] data, PackLayout layout, List<PackScene> scenes, PackProgress progress) {
    List<Load> loads = new ArrayList<>();
    Unpacker unpacker = new Unpacker(data);
    byte[] want = new byte[layout.frameBytes()];
    byte[] got = new byte[layout.frameBytes()];
    for (int s = 0; s < scenes.size(); s++) {
      PackScene scene = scenes.get(s);
      Load load = new Load();
      loads.add(load);
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
        load.take(unpacker.cyclesOfLamps());
        if (!Arrays.equals(want, got)) {
          throw new IllegalStateException(
              "scene " + scene.id() + ", frame " + f + ": packed data differs from the table");
        }
      }
    }
    return loads;
  }
}
