package lampwright.exporters.packed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.zip.Deflater;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.Progress;
import lampwright.exporters.TestJobs;
import lampwright.exporters.packed.encode.PackProgress;
import lampwright.exporters.packed.encode.PackScene;
import lampwright.exporters.packed.encode.Packer;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/**
 * Prints what the corpus, the samples, small tables on which nothing was tried out, and shows of
 * successive cues come to: packed, by general-purpose compressors, and by the {@link PeerLzss} that
 * fits a small controller. LZMA2 is counted without the container of .xz files.
 */
final class Benchmark {
  private static final List<List<String>> PROGRAMS =
      List.of(
          List.of("lz4", "-12", "-c"),
          List.of("zstd", "--ultra", "-22", "-q", "-c"),
          List.of("brotli", "-q", "11", "-c"),
          List.of("xz", "--format=raw", "--lzma2=preset=9e", "-c"));

  // Columns of a row, as they are printed.
  private static final int LZ4 = 1;
  private static final int LZMA2 = 4;
  private static final int PEER = 5;
  private static final int PACKED = 6;

  /** Program memory of the player on an ATmega328P, as PlayerTest prints it. */
  private static final int PLAYER_BYTES = 2176;

  private static final int HELD_OUT = 20;
  private static final int PIXELS = 64;
  private static final int MINUTE_MS = 60_000;
  private static final int FRAMES = 3600;

  private Benchmark() {}

  public static void main(String[] args)
      throws IOException, InterruptedException, CancelledException {
    System.out.printf(
        "%-40s %8s %7s %7s %7s %7s %7s %7s %7s %7s %7s %6s%n",
        "table", "raw", "zlib", "lz4", "zstd", "brotli", "lzma2", "lzss", "packed", "/lzma2",
        "/lzss", "s");
    Means corpus = new Means();
    for (Corpus.Table table : Corpus.all()) {
      long start = cpuNanos();
      int size =
          Packer.pack(
                  table.layout(),
                  List.of(table.scene()),
                  Target.slowestDecodeCost(),
                  PackProgress.NONE)
              .size();
      corpus.add(row(table.name(), table.bytes(), size, cpuNanos() - start));
    }
    Means samples = new Means();
    for (SampleTables.Sample sample : SampleTables.all()) {
      samples.add(row("sample " + sample.name(), sample.job()));
    }
    Means heldOut = new Means();
    for (int seed = 1; seed <= HELD_OUT; seed++) {
      heldOut.add(row("held out " + seed, MixedProjects.small(seed)));
    }
    Means shows = new Means();
    for (int cues : new int[] {1, 1, 1, 30, 100}) {
      int seed = shows.tables + 1;
      String name = String.format(Locale.ROOT, "show %d, %d pixels", seed, PIXELS);
      shows.add(row(name, MixedProjects.show(seed, PIXELS, MINUTE_MS, cues)));
    }
    corpus.print("corpus");
    samples.print("samples");
    heldOut.print("held out");
    shows.print("shows");
    corpus.with(samples).print("corpus and samples");
    samples.with(heldOut).with(shows).print("samples, held out and shows");
    time("one lamp", new Model().chain(true, PIXELS));
    int[] each = new int[PIXELS];
    Arrays.fill(each, 1);
    time("a lamp each", new Model().chain(true, each));
  }

  private static int[] row(String name, ExportJob job)
      throws IOException, InterruptedException, CancelledException {
    byte[] bytes = TestJobs.table(job);
    long start = cpuNanos();
    int size =
        ScenePacker.pack(
                "packed", List.of(job.table()), Target.slowestDecodeCost(), Progress.SILENT)
            .size();
    return row(name, bytes, size, cpuNanos() - start);
  }

  /**
   * Prints how long a minute of pixels takes whose values wander at random: no period, no flat
   * part.
   */
  private static void time(String what, Model model) {
    int size = model.frameBytes;
    byte[] table = new byte[size * FRAMES];
    Random random = new Random(20261128);
    for (int i = size; i < table.length; i++) {
      int next = (table[i - size] & 255) + random.nextInt(5) - 2;
      table[i] = (byte) Math.max(0, Math.min(255, next));
    }
    PackScene scene =
        new PackScene(
            "wander",
            FRAMES,
            true,
            1_000_000 / 60,
            (f, into) -> System.arraycopy(table, f * size, into, 0, size));
    long start = System.nanoTime();
    long startCpu = cpuNanos();
    Packer.pack(model.layout(), List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE);
    System.out.printf(
        Locale.ROOT,
        "%d RGBW pixels, %d frames that wander at random, %s: %.1f s of the processor, %.1f in all%n",
        PIXELS,
        FRAMES,
        what,
        (cpuNanos() - startCpu) / 1e9,
        (System.nanoTime() - start) / 1e9);
  }

  /**
   * Processor time of the whole process, Java's own compiler included, as a short command has it.
   */
  private static long cpuNanos() {
    return ProcessHandle.current().info().totalCpuDuration().map(Duration::toNanos).orElseThrow();
  }

  /** Prints a row; its sizes by zlib, the programs, the peer, and packed. */
  private static int[] row(String name, byte[] bytes, int packed, long nanos)
      throws IOException, InterruptedException {
    int[] sizes = new int[PACKED + 1];
    sizes[0] = zlib(bytes);
    Path file = Files.createTempFile("table", ".bin");
    try {
      Files.write(file, bytes);
      for (int i = 0; i < PROGRAMS.size(); i++) {
        sizes[i + 1] = run(PROGRAMS.get(i), file);
      }
    } finally {
      Files.delete(file);
    }
    sizes[PEER] = PeerLzss.size(bytes);
    sizes[PACKED] = packed;
    System.out.printf(Locale.ROOT, "%-40s %8d", name, bytes.length);
    for (int size : sizes) {
      System.out.printf(Locale.ROOT, " %7d", size);
    }
    System.out.printf(
        Locale.ROOT,
        " %7.3f %7.3f %6.2f%n",
        (double) packed / sizes[LZMA2],
        (double) packed / sizes[PEER],
        nanos / 1e9);
    return sizes;
  }

  /** Geometric means of packed to each of the others. */
  private static final class Means {
    private final double[] logs = new double[PACKED];
    private double withCode;
    private int below;
    private int tables;

    void add(int[] sizes) {
      tables++;
      for (int i = 0; i < logs.length; i++) {
        logs[i] += Math.log((double) sizes[PACKED] / sizes[i]);
      }
      int own = sizes[PACKED] + PLAYER_BYTES;
      int peer = sizes[PEER] + PeerLzss.CODE_BYTES;
      withCode += Math.log((double) own / peer);
      below += own < peer ? 1 : 0;
    }

    Means with(Means others) {
      Means both = new Means();
      both.tables = tables + others.tables;
      both.withCode = withCode + others.withCode;
      both.below = below + others.below;
      for (int i = 0; i < logs.length; i++) {
        both.logs[i] = logs[i] + others.logs[i];
      }
      return both;
    }

    void print(String what) {
      System.out.printf(
          Locale.ROOT,
          "%s, %d tables: geometric mean of packed to zlib %.3f, lz4 %.3f, zstd %.3f, brotli %.3f,"
              + " lzma2 %.3f, lzss %.3f; with player to lzss with its own %.3f, below it %d%n",
          what,
          tables,
          Math.exp(logs[0] / tables),
          Math.exp(logs[LZ4] / tables),
          Math.exp(logs[2] / tables),
          Math.exp(logs[3] / tables),
          Math.exp(logs[LZMA2] / tables),
          Math.exp(logs[PEER] / tables),
          Math.exp(withCode / tables),
          below);
    }
  }

  private static int zlib(byte[] bytes) {
    Deflater deflater = new Deflater(9);
    deflater.setInput(bytes);
    deflater.finish();
    byte[] buffer = new byte[65536];
    int size = 0;
    while (!deflater.finished()) {
      size += deflater.deflate(buffer);
    }
    deflater.end();
    return size;
  }

  private static int run(List<String> program, Path file) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(program);
    command.add(file.toString());
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    int size = process.getInputStream().readAllBytes().length;
    if (process.waitFor() != 0) {
      throw new IOException(program + " failed");
    }
    return size;
  }
}
