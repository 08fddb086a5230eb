package lampwright.exporters.packed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.zip.Deflater;
import lampwright.exporters.CancelledException;
import lampwright.exporters.packed.encode.PackProgress;
import lampwright.exporters.packed.encode.PackScene;
import lampwright.exporters.packed.encode.Packer;
import lampwright.exporters.target.Target;

/** Prints what the corpus and the samples come to, packed and by general-purpose compressors. */
final class Benchmark {
  private static final List<List<String>> PROGRAMS =
      List.of(
          List.of("lz4", "-12", "-c"),
          List.of("zstd", "--ultra", "-22", "-q", "-c"),
          List.of("brotli", "-q", "11", "-c"),
          List.of("xz", "-9e", "-c"));

  private static final int PIXELS = 64;
  private static final int FRAMES = 3600;

  private Benchmark() {}

  public static void main(String[] args)
      throws IOException, InterruptedException, CancelledException {
    System.out.printf(
        "%-40s %8s %7s %7s %7s %7s %7s %7s %6s %6s %6s%n",
        "table", "raw", "zlib", "lz4", "zstd", "brotli", "xz", "packed", "/xz", "/lz4", "s");
    Means corpus = new Means();
    for (Corpus.Table table : Corpus.all()) {
      long start = System.nanoTime();
      int size =
          Packer.pack(
                  table.layout(),
                  List.of(table.scene()),
                  Target.slowestDecodeCost(),
                  PackProgress.NONE)
              .size();
      corpus.add(row(table.name(), table.bytes(), size, System.nanoTime() - start));
    }
    Means samples = new Means();
    for (SampleTables.Sample sample : SampleTables.all()) {
      long start = System.nanoTime();
      int size = sample.packed().length;
      long nanos = System.nanoTime() - start;
      samples.add(row("sample " + sample.name(), sample.bytes(), size, nanos));
    }
    corpus.print("corpus");
    samples.print("samples");
    corpus.with(samples).print("all");
    time("one lamp", new Model().chain(true, PIXELS));
    int[] each = new int[PIXELS];
    Arrays.fill(each, 1);
    time("a lamp each", new Model().chain(true, each));
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
    Packer.pack(model.layout(), List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE);
    System.out.printf(
        Locale.ROOT,
        "%d RGBW pixels, %d frames that wander at random, %s: %.1f s%n",
        PIXELS,
        FRAMES,
        what,
        (System.nanoTime() - start) / 1e9);
  }

  /** Prints a row; its sizes by zlib, the programs, and packed. */
  private static int[] row(String name, byte[] bytes, int packed, long nanos)
      throws IOException, InterruptedException {
    int[] sizes = new int[6];
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
    sizes[5] = packed;
    System.out.printf(
        Locale.ROOT,
        "%-40s %8d %7d %7d %7d %7d %7d %7d %6.3f %6.3f %6.2f%n",
        name,
        bytes.length,
        sizes[0],
        sizes[1],
        sizes[2],
        sizes[3],
        sizes[4],
        packed,
        (double) packed / sizes[4],
        (double) packed / sizes[1],
        nanos / 1e9);
    return sizes;
  }

  /** Geometric means of packed to each of the others. */
  private static final class Means {
    private final double[] logs = new double[5];
    private int tables;

    void add(int[] sizes) {
      tables++;
      for (int i = 0; i < logs.length; i++) {
        logs[i] += Math.log((double) sizes[5] / sizes[i]);
      }
    }

    Means with(Means others) {
      Means both = new Means();
      both.tables = tables + others.tables;
      for (int i = 0; i < logs.length; i++) {
        both.logs[i] = logs[i] + others.logs[i];
      }
      return both;
    }

    void print(String what) {
      System.out.printf(
          Locale.ROOT,
          "%s, %d tables: geometric mean of packed to zlib %.3f, lz4 %.3f, zstd %.3f, brotli %.3f,"
              + " xz %.3f%n",
          what,
          tables,
          Math.exp(logs[0] / tables),
          Math.exp(logs[1] / tables),
          Math.exp(logs[2] / tables),
          Math.exp(logs[3] / tables),
          Math.exp(logs[4] / tables));
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
