package lampwright.exporters.packed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.Deflater;

/** Prints what the corpus comes to, packed and by general-purpose compressors. */
final class Benchmark {
  private static final List<List<String>> PROGRAMS =
      List.of(
          List.of("lz4", "-12", "-c"),
          List.of("zstd", "--ultra", "-22", "-q", "-c"),
          List.of("brotli", "-q", "11", "-c"),
          List.of("xz", "-9e", "-c"));

  private Benchmark() {}

  public static void main(String[] args) throws IOException, InterruptedException {
    System.out.printf(
        "%-22s %8s %7s %7s %7s %7s %7s %7s %6s %6s %6s%n",
        "table", "raw", "zlib", "lz4", "zstd", "brotli", "xz", "packed", "/xz", "/lz4", "s");
    double[] logs = new double[6];
    List<Corpus.Table> tables = new ArrayList<>(Corpus.all());
    Path file = Files.createTempFile("table", ".bin");
    for (Corpus.Table table : tables) {
      Files.write(file, table.bytes());
      int[] sizes = new int[6];
      sizes[0] = zlib(table.bytes());
      for (int i = 0; i < PROGRAMS.size(); i++) {
        sizes[i + 1] = run(PROGRAMS.get(i), file);
      }
      long start = System.nanoTime();
      sizes[5] = Packer.pack(table.layout(), List.of(table.scene()), PackProgress.NONE).length;
      double seconds = (System.nanoTime() - start) / 1e9;
      System.out.printf(
          Locale.ROOT,
          "%-22s %8d %7d %7d %7d %7d %7d %7d %6.3f %6.3f %6.2f%n",
          table.name(),
          table.bytes().length,
          sizes[0],
          sizes[1],
          sizes[2],
          sizes[3],
          sizes[4],
          sizes[5],
          (double) sizes[5] / sizes[4],
          (double) sizes[5] / sizes[1],
          seconds);
      for (int i = 0; i < 5; i++) {
        logs[i] += Math.log((double) sizes[5] / sizes[i]);
      }
    }
    Files.delete(file);
    System.out.printf(
        Locale.ROOT,
        "geometric mean of packed to zlib %.3f, lz4 %.3f, zstd %.3f, brotli %.3f, xz %.3f (%d"
            + " tables)%n",
        Math.exp(logs[0] / tables.size()),
        Math.exp(logs[1] / tables.size()),
        Math.exp(logs[2] / tables.size()),
        Math.exp(logs[3] / tables.size()),
        Math.exp(logs[4] / tables.size()),
        tables.size());
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
