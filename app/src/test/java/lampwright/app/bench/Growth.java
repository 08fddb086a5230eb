package lampwright.app.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import lampwright.app.command.CommandLineProgram;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/**
 * How work grows with pixels, lamps and cues: processor time of one thread, medians, as a table and
 * as docs/pictures/growth.svg. A process of its own that sees one processor does the work, so that
 * no second thread takes a share. What would take longer than a minute is left out.
 */
public final class Growth {
  static final int[] COUNTS = {10, 100, 1_000, 10_000};

  private static final double MOST_SECONDS = 60;
  private static final double NANOS = 1e9;
  private static final int MOST_TURNS = 5;
  private static final double SECONDS_OF_TURNS = 4;

  /** A step of work: what it is called, and where it is done. */
  enum Step {
    OPEN,
    RENDER,
    CHECK,
    MEASURE,
    PACK;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final Path folder;

  private Growth(Path folder) {
    this.folder = folder;
  }

  /** Starts the process; in it, with a word, does the work. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Path app = Path.of(System.getProperty("lampwright.app", "app")).toAbsolutePath();
    if (System.getProperty("growth.alone") != null) {
      new Growth(Files.createTempDirectory("lampwright-growth")).run(app.resolveSibling("docs"));
      return;
    }
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:ActiveProcessorCount=1",
                "-Xmx2g",
                "-Dgrowth.alone=yes",
                "-Dlampwright.app=" + app,
                "-classpath",
                System.getProperty("java.class.path"),
                Growth.class.getName())
            .inheritIO()
            .start();
    if (process.waitFor() != 0) {
      throw new IOException("the process ended with " + process.exitValue());
    }
  }

  private void run(Path docs) throws IOException {
    Map<GrowthProjects, List<Map<Step, OptionalDouble>>> all = new EnumMap<>(GrowthProjects.class);
    // Java compiles what is slow while it runs: not within the first figures.
    for (GrowthProjects kind : GrowthProjects.values()) {
      Path file = file(kind, COUNTS[1]);
      for (Step step : Step.values()) {
        seconds(step, file);
      }
    }
    System.out.println("| what grows | count | open | render | check | measure | pack |");
    System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
    for (GrowthProjects kind : GrowthProjects.values()) {
      List<Map<Step, OptionalDouble>> rows = new ArrayList<>();
      for (int count : COUNTS) {
        if (count <= kind.most()) {
          rows.add(row(kind, count, rows));
          print(kind, count, rows.get(rows.size() - 1));
        }
      }
      all.put(kind, rows);
    }
    Files.writeString(docs.resolve("pictures").resolve("growth.svg"), GrowthPlot.svg(all));
  }

  private Map<Step, OptionalDouble> row(
      GrowthProjects kind, int count, List<Map<Step, OptionalDouble>> before) throws IOException {
    Map<Step, OptionalDouble> row = new EnumMap<>(Step.class);
    Path file = file(kind, count);
    for (Step step : Step.values()) {
      row.put(
          step,
          isTooLong(step, before) ? OptionalDouble.empty() : OptionalDouble.of(median(step, file)));
    }
    return row;
  }

  /** Whether a step will take too long, if it grows on as it did last. */
  private static boolean isTooLong(Step step, List<Map<Step, OptionalDouble>> before) {
    int n = before.size();
    if (n < 2) {
      return false;
    }
    OptionalDouble last = before.get(n - 1).get(step);
    OptionalDouble lastButOne = before.get(n - 2).get(step);
    return last.isEmpty()
        || lastButOne.isEmpty()
        || last.getAsDouble() * last.getAsDouble() / lastButOne.getAsDouble() > MOST_SECONDS;
  }

  private double median(Step step, Path file) throws IOException {
    List<Double> turns = new ArrayList<>();
    double sum = 0;
    while (turns.size() < MOST_TURNS && (turns.isEmpty() || sum < SECONDS_OF_TURNS)) {
      double seconds = seconds(step, file);
      if (Double.isNaN(seconds)) {
        return seconds;
      }
      sum += seconds;
      turns.add(seconds);
    }
    return turns.stream().sorted().toList().get(turns.size() / 2);
  }

  /** Not a number where the project is refused. */
  private double seconds(Step step, Path file) throws IOException {
    Project project = ProjectReader.read(file).project().orElseThrow();
    PrintStream out = System.out;
    PrintStream err = System.err;
    PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, UTF_8);
    System.setOut(nowhere);
    System.setErr(nowhere);
    try {
      var threads = ManagementFactory.getThreadMXBean();
      long start = threads.getCurrentThreadCpuTime();
      boolean done =
          switch (step) {
            case OPEN -> ProjectReader.read(file).project().isPresent();
            case RENDER -> render(project);
            case CHECK, MEASURE -> command(step.word(), file);
            case PACK -> pack(project);
          };
      long end = threads.getCurrentThreadCpuTime();
      return done ? (end - start) / NANOS : Double.NaN;
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private static FrameTable table(Project project) {
    return FrameTable.of(project.rig(), project.scenes().get(0));
  }

  private static boolean render(Project project) {
    FrameTable table = table(project);
    byte[] frame = new byte[table.layout().bytes()];
    for (FrameCursor cursor = table.passingCursor(); cursor.hasNext(); ) {
      cursor.next(frame);
    }
    return true;
  }

  private static boolean command(String word, Path file) {
    // 1 where there are errors, such as a supply that is too weak: all the work is done as well.
    return CommandLineProgram.runOnSystemStreams(word, file.toString()) <= 1;
  }

  private static boolean pack(Project project) {
    List<FrameTable> tables = List.of(table(project));
    if (!ScenePacker.faults(tables).isEmpty()) {
      return false;
    }
    try {
      ScenePacker.pack("packed", tables, Target.slowestDecodeCost(), Progress.SILENT);
    } catch (CancelledException impossible) {
      throw new IllegalStateException(impossible);
    }
    return true;
  }

  private Path file(GrowthProjects kind, int count) throws IOException {
    Path file = folder.resolve(kind.name() + count + ".lampwright.json");
    if (!Files.exists(file)) {
      Files.writeString(file, kind.project(count));
    }
    return file;
  }

  private static void print(GrowthProjects kind, int count, Map<Step, OptionalDouble> row) {
    StringBuilder line = new StringBuilder();
    line.append(String.format(Locale.ROOT, "| %s | %,d |", kind.words(), count));
    for (Step step : Step.values()) {
      OptionalDouble seconds = row.get(step);
      String figure =
          seconds.isEmpty()
              ? "above 1 min"
              : Double.isNaN(seconds.getAsDouble()) ? "refused" : figure(seconds.getAsDouble());
      line.append(' ').append(figure).append(" |");
    }
    System.out.println(line);
  }

  private static String figure(double seconds) {
    double ms = seconds * 1000;
    return String.format(Locale.ROOT, ms < 10 ? "%.1f ms" : "%,.0f ms", ms);
  }
}
