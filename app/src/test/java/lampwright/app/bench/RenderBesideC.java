package lampwright.app.bench;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.PaintContext;
import lampwright.engine.pattern.Painter;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.render.TrackRows;
import lampwright.engine.rig.Rig;
import lampwright.engine.time.Ratio;

/**
 * The renderer beside a plain C program of the same arithmetic, render_plain.c: processor time of
 * one thread in turns, medians, and whether the bytes are equal.
 */
public final class RenderBesideC {
  private static final int TURNS = 7;
  private static final int WARM_UP = 3;

  /** What a scene is rendered for before it counts, until Java's compiler has nothing to add. */
  private static final double WARM_UP_SECONDS = 5;

  private static final double NANOS = 1e9;

  private final Path program;
  private final Path tint;

  private RenderBesideC(Path program, Path tint) {
    this.program = program;
    this.tint = tint;
  }

  /** Compiles the program and prints a line a scene. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("lampwright-bench");
    Path app = Path.of(System.getProperty("lampwright.app", "app")).toAbsolutePath();
    Path program = folder.resolve("render_plain");
    run(
        List.of(
            "gcc",
            "-std=c99",
            "-O2",
            "-ffp-contract=off",
            "-o",
            program.toString(),
            app.resolve("src/test/c/render_plain.c").toString(),
            "-lm"));
    Path tint = folder.resolve("tint");
    Files.write(tint, tintDrives());
    RenderBesideC beside = new RenderBesideC(program, tint);
    beside.compare("direct", BenchScenes.hiding(ColourMatching.DIRECT));
    beside.compare("open", BenchScenes.open());
    beside.compare("lamps", BenchScenes.lamps());
    compareThreads();
  }

  private void compare(String name, FrameTable table) throws IOException, InterruptedException {
    List<Double> ours = new ArrayList<>();
    List<Double> plain = new ArrayList<>();
    String crc = "";
    for (double warm = 0; warm < WARM_UP_SECONDS; ) {
      warm += seconds(table.passingCursor());
    }
    for (int turn = 0; turn < TURNS; turn++) {
      ours.add(seconds(table.passingCursor()));
      List<String> printed =
          run(
              List.of(
                  program.toString(),
                  name,
                  String.valueOf(BenchScenes.PIXELS),
                  String.valueOf(BenchScenes.FRAMES),
                  "1",
                  tint.toString()));
      plain.add(Double.parseDouble(printed.get(0)));
      crc = printed.get(1);
    }
    double pixelFrames = (double) BenchScenes.PIXELS * BenchScenes.FRAMES;
    double own = pixelFrames / median(ours);
    double other = pixelFrames / median(plain);
    System.out.printf(
        Locale.ROOT,
        "%-8s %6.1f million pixel-frames/s, plain C %6.1f, ratio %5.2f, bytes %s%n",
        name,
        own / 1e6,
        other / 1e6,
        own / other,
        crc.equals(crc(table)) ? "equal" : "DIFFER");
  }

  private static double seconds(FrameCursor cursor) {
    byte[] frame = new byte[4 * BenchScenes.PIXELS];
    var threads = ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadCpuTime();
    while (cursor.hasNext()) {
      cursor.next(frame);
    }
    return (threads.getCurrentThreadCpuTime() - start) / NANOS;
  }

  /**
   * What two threads take beside one, in turns: time on the clock, and the processor time of the
   * thread that asks, which is the least that the clock can take on a machine without other work.
   */
  private static void compareThreads() {
    List<Double> clock = new ArrayList<>();
    List<Double> processor = new ArrayList<>();
    for (int turn = 0; turn < WARM_UP + TURNS; turn++) {
      FrameTable table = BenchScenes.open();
      long start = System.nanoTime();
      double oneProcessor = seconds(table.passingCursor());
      long middle = System.nanoTime();
      double twoProcessor = seconds(table.cursor());
      long end = System.nanoTime();
      if (turn >= WARM_UP) {
        clock.add((double) (middle - start) / (end - middle));
        processor.add(oneProcessor / twoProcessor);
      }
    }
    System.out.printf(
        Locale.ROOT,
        "open on two threads: %.2f times as fast by the clock, %.2f by processor time%n",
        median(clock),
        median(processor));
  }

  private static String crc(FrameTable table) {
    CRC32 crc = new CRC32();
    byte[] frame = new byte[table.layout().bytes()];
    for (FrameCursor cursor = table.cursor(); cursor.hasNext(); ) {
      cursor.next(frame);
      crc.update(frame);
    }
    return String.format("%08x", crc.getValue());
  }

  private static byte[] tintDrives() {
    FrameTable table = BenchScenes.open();
    Rig rig = table.layout().rig();
    List<Mixer> row = TrackRows.of(rig, table.scene().tracks().get(0)).iterator().next();
    Painter painter =
        BenchScenes.TINT.painter(
            new PaintContext(row.subList(0, 1), rig.curve(), Ratio.of(BenchScenes.LENGTH_MS)));
    double[] drives = new double[Mixer.SLOTS];
    ByteBuffer bytes =
        ByteBuffer.allocate(BenchScenes.FRAMES * Mixer.SLOTS * Double.BYTES)
            .order(ByteOrder.nativeOrder());
    for (int frame = 0; frame < BenchScenes.FRAMES; frame++) {
      painter.paint(Ratio.of(20L * frame), drives);
      Arrays.stream(drives).forEach(bytes::putDouble);
    }
    return bytes.array();
  }

  private static double median(List<Double> seconds) {
    return seconds.stream().sorted().toList().get(seconds.size() / 2);
  }

  private static List<String> run(List<String> words) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
    List<String> printed =
        new String(process.getInputStream().readAllBytes(), US_ASCII).lines().toList();
    if (process.waitFor() != 0) {
      throw new IOException(String.join(" ", words) + ": " + printed);
    }
    return printed;
  }
}
