package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import lampwright.engine.check.Fault;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;
import lampwright.exporters.packed.play.DecodeCost;
import lampwright.exporters.packed.play.Unpacker;

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
   * The most bytes that one scene takes packed (docs/packed.md, File).
   *
   * @param tableBytes of its frame table
   * @param frames 1 or more
   */
  public static long mostBytes(long tableBytes, int frames) {
    long entries = (frames + Format.MAX_ENTRY_FRAMES - 1L) / Format.MAX_ENTRY_FRAMES;
    return tableBytes + 37 + 8 * entries;
  }

  /**
   * Packs scenes.
   *
   * @param layout the rig's bytes
   * @param scenes the scenes, 1 to {@value #MAX_SCENES}
   * @param cost what playing takes on the controller: a frame should take a quarter of its time on
   *     the wires at most
   * @param progress told how far packing is
   * @return the packed data; the same input gives the same bytes. Where lamps take so much room
   *     that the data would be more than 64 bytes longer than the frame tables, all lamps are
   *     merged into one, which {@link Unpacker#lamps} tells
   * @throws IllegalArgumentException if a table is too large
   * @throws PackRefusedException if the data would be too long for any player
   * @throws CancellationException if {@code progress} says stop
   */
  public static Packed pack(
      PackLayout layout, List<PackScene> scenes, DecodeCost cost, PackProgress progress) {
    return pack(layout, scenes, cost, SceneCoder::part, progress);
  }

  /** Packs scenes by a way to code lamps that need not be right. */
  static Packed pack(
      PackLayout layout,
      List<PackScene> scenes,
      DecodeCost cost,
      PartCoder coder,
      PackProgress progress) {
    return pack(layout, scenes, cost, coder, false, progress);
  }

  /**
   * Packs scenes with a show, whatever that takes: lamps that can't be played apart would be none.
   *
   * @param show gives the tables of the show for so many lamps
   * @param ceiling the table of its ceiling, of no bytes if there is none
   */
  static Packed packShow(
      PackLayout layout,
      List<PackScene> scenes,
      DecodeCost cost,
      IntFunction<byte[]> show,
      byte[] ceiling,
      PackProgress progress) {
    Packed packed = pack(layout, scenes, cost, SceneCoder::part, true, progress);
    int lamps = new Unpacker(packed.data()).lamps();
    if (lamps < layout.lamps().size()) {
      throw new PackRefusedException(
          new Fault(
              "packed data",
              "one piece for all lamps",
              "must be one for each lamp where there are situations; this is a fault of the"
                  + " program, and other formats are not concerned"));
    }
    byte[] data = PackedShow.append(packed.data(), show.apply(lamps), ceiling);
    return new Packed(data, packed.standIns());
  }

  private static Packed pack(
      PackLayout layout,
      List<PackScene> scenes,
      DecodeCost cost,
      PartCoder coder,
      boolean apart,
      PackProgress progress) {
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
    Attempt attempt = fit(layout, lamps, scenes, columnBytes, cost, false, coder, progress);
    long raw = 0;
    for (PackScene scene : scenes) {
      raw += (long) scene.frames() * layout.frameBytes();
    }
    long longest = apart ? Long.MAX_VALUE : raw + SPARE;
    if (attempt.data.length > longest) {
      List<int[]> one = List.of(IntStream.range(0, layout.frameBytes()).toArray());
      Attempt merged = fit(layout, one, scenes, columnBytes, cost, true, coder, PackProgress.NONE);
      attempt = merged.data.length < attempt.data.length ? merged : attempt;
    }
    PackProgress proving = share -> progress.proceed(CODING_SHARE + (1 - CODING_SHARE) * share);
    SafetyNet proved = SafetyNet.under(attempt, longest, proving);
    SpeedTuning tuning = new SpeedTuning(proved.attempt(), proved.loads(), coder, progress);
    report(progress, 1);
    List<Packed.StandIn> standIns = new ArrayList<>(proved.standIns());
    tuning.standIns().stream().filter(s -> !standIns.contains(s)).forEach(standIns::add);
    return new Packed(tuning.data(), standIns);
  }

  static PackRefusedException tooLong(Attempt attempt) {
    return tooLong(attempt.data.length, attempt.coding.placeBytes());
  }

  static PackRefusedException tooLong(int bytes, int placeBytes) {
    return new PackRefusedException(
        new Fault(
            "packed data",
            bytes + " bytes",
            "at most " + Format.maxSize(placeBytes) + " can be played"));
  }

  /** Packs with short places if that goes. */
  private static Attempt fit(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      int columnBytes,
      DecodeCost cost,
      boolean merged,
      PartCoder coder,
      PackProgress progress) {
    Coding narrow = new Coding(columnBytes, 2);
    try {
      Attempt attempt = attempt(layout, lamps, scenes, narrow, cost, merged, coder, progress);
      if (attempt.fits()) {
        return attempt;
      }
    } catch (PlacesTooShortException known) {
      // Wide ones it is.
    }
    Coding wide = new Coding(columnBytes, 3);
    Attempt attempt = attempt(layout, lamps, scenes, wide, cost, merged, coder, PackProgress.NONE);
    if (!attempt.fits()) {
      throw tooLong(attempt);
    }
    return attempt;
  }

  private static Attempt attempt(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      Coding coding,
      DecodeCost cost,
      boolean merged,
      PartCoder coder,
      PackProgress progress) {
    List<List<LampPart>> parts = new ArrayList<>();
    List<FoundWaves> found = new ArrayList<>();
    for (int s = 0; s < scenes.size(); s++) {
      FoundWaves ofScene = new FoundWaves(lamps.size());
      found.add(ofScene);
      SceneCoder scene =
          new SceneCoder(layout, lamps, scenes.get(s), coding, cost, merged, ofScene);
      int number = s;
      List<LampPart> own =
          PairOfThreads.each(
              lamps.size(),
              lamp -> coder.part(scene, lamp, SpeedLevels.NONE),
              lamp ->
                  report(
                      progress,
                      CODING_SHARE * (number + (double) lamp / lamps.size()) / scenes.size()));
      parts.add(own);
    }
    return new Attempt(layout, lamps, scenes, coding, cost, merged, parts, found);
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
}
