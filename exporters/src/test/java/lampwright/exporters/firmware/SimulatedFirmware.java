package lampwright.exporters.firmware;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;

/** Exported firmware, compiled by avr-gcc and run on libsimavr, whose pins the prover reads. */
public final class SimulatedFirmware {
  private static final List<String> STRICT =
      List.of("-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror");

  private final OutsideTools tools = OutsideTools.onThisMachine();
  private final Path folder;
  private final OutsideTools.Tool prover;

  /**
   * Compiles the prover.
   *
   * @param folder empty, for all that is made
   */
  public SimulatedFirmware(Path folder) {
    this.folder = folder;
    tools.findSimulator();
    Path program = folder.resolve("prover");
    Path source = folder.resolve("prover.c");
    try {
      Files.write(source, FirmwareProof.proverSource());
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
    tools
        .find("gcc", "gcc")
        .run(
            folder,
            "-std=c99",
            "-O2",
            source.toString(),
            "-o",
            program.toString(),
            "-lsimavr",
            "-lelf")
        .quietOut();
    this.prover = new OutsideTools.Tool(program);
  }

  /**
   * What the prover says.
   *
   * @param json its report
   */
  public record Report(String json) {
    /** A figure by its name, the first of that name. */
    public String figure(String name) {
      Matcher found = Pattern.compile("\"" + name + "\":([^,}\\]]*)").matcher(json);
      return found.find() ? found.group(1) : "-";
    }

    /** Every figure of that name. */
    public List<String> figures(String name) {
      return Pattern.compile("\"" + name + "\":([^,}\\]]*)")
          .matcher(json)
          .results()
          .map(found -> found.group(1))
          .toList();
    }

    public boolean passed() {
      return figure("passed").equals("true");
    }
  }

  /** The folder that {@link #export} writes to. */
  public Path sources() {
    return folder.resolve("firmware");
  }

  /** Writes the folder of a job anew. */
  public void export(ProjectJob job) throws Exception {
    for (String name : new FirmwareExporter().facts(job).files()) {
      Files.deleteIfExists(sources().resolve(name));
    }
    new FirmwareExporter().export(job, this::open, Progress.SILENT);
  }

  private OutputStream open(String name) throws IOException {
    Path file = sources().resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }

  /**
   * Compiles what was exported.
   *
   * @param main the file with the main program; the folder's own {@code main.c} or another
   * @param more words for the compiler
   */
  public Path compile(ProjectJob job, Path main, String... more) throws IOException {
    List<String> words = new ArrayList<>(flags(job));
    words.addAll(STRICT);
    words.addAll(List.of(more));
    words.add(main.toString());
    try (Stream<Path> all = Files.list(sources().resolve("src"))) {
      all.map(Path::toString).filter(f -> f.matches(".*\\.[cS]")).sorted().forEach(words::add);
    }
    Path elf = folder.resolve("show.elf");
    words.addAll(List.of("-Wl,--gc-sections", "-o", elf.toString()));
    tools.find("avr-gcc", "gcc-avr").run(folder, words.toArray(String[]::new)).quietOut();
    return elf;
  }

  /** Exports, compiles and runs the first scene of a job, for two loops and the seam. */
  public Report prove(ProjectJob job) throws Exception {
    export(job);
    return run(job, compile(job, main()));
  }

  /**
   * Compiles an example as a hobby IDE does: as C++, with the core's header before it.
   *
   * @param core folder of a core
   */
  public Path compileExample(ProjectJob job, String example, Path core) throws IOException {
    Path source = folder.resolve(example + ".cpp");
    Files.writeString(
        source,
        "#include <Arduino.h>\n"
            + Files.readString(
                sources().resolve("examples").resolve(example).resolve(example + ".ino")));
    List<String> objects = new ArrayList<>();
    List<String> common = List.of("-DARDUINO=10819", "-I" + core, "-Wall", "-Wextra", "-Werror");
    try (Stream<Path> all = Files.list(sources().resolve("src"))) {
      for (Path file :
          Stream.concat(
                  all.filter(f -> f.toString().matches(".*\\.[cS]")).sorted(),
                  Stream.of(source, core.resolve("avr_core.cpp")))
              .toList()) {
        Path object = folder.resolve(file.getFileName() + ".o");
        List<String> words = new ArrayList<>(flags(job));
        words.addAll(common);
        words.add(file.toString().endsWith(".cpp") ? "-std=gnu++11" : "-std=gnu11");
        words.addAll(List.of("-c", file.toString(), "-o", object.toString()));
        tools.find("avr-gcc", "gcc-avr").run(folder, words.toArray(String[]::new)).quietOut();
        objects.add(object.toString());
      }
    }
    Path elf = folder.resolve("example.elf");
    List<String> words = new ArrayList<>(flags(job));
    words.addAll(objects);
    words.addAll(List.of("-Wl,--gc-sections", "-o", elf.toString()));
    tools.find("avr-gcc", "gcc-avr").run(folder, words.toArray(String[]::new)).quietOut();
    return elf;
  }

  private List<String> flags(ProjectJob job) {
    FirmwareProof proof = new FirmwareProof(job.project().rig());
    return List.of(
        "-mmcu=" + proof.controller(),
        "-DF_CPU=" + proof.hertz() + "UL",
        "-Os",
        "-ffunction-sections",
        "-fdata-sections",
        "-DLAMPWRIGHT_PROBE",
        "-I" + sources().resolve("src"));
  }

  /** The exported main program. */
  public Path main() {
    return sources().resolve("main.c");
  }

  /** Changes an exported file, as a builder might. */
  public void change(String name, String what, String by) throws IOException {
    Path file = sources().resolve(name);
    String text = Files.readString(file);
    if (!text.contains(what)) {
      throw new IllegalArgumentException(name + ": no " + what);
    }
    Files.writeString(file, text.replace(what, by));
  }

  /** The frame table of the first scene of a job. */
  public byte[] table(ProjectJob job) {
    return TestJobs.table(ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT));
  }

  /**
   * Runs a program that plays the first scene of a job.
   *
   * @param more words for the prover
   */
  public Report run(ProjectJob job, Path elf, String... more) throws IOException {
    return run(job, elf, words -> Stream.concat(words, Stream.of(more)));
  }

  /** Runs it with other words for the prover. */
  public Report run(ProjectJob job, Path elf, UnaryOperator<Stream<String>> change)
      throws IOException {
    return run(job, elf, table(job), change);
  }

  /** Runs it against a table. */
  public Report run(ProjectJob job, Path elf, byte[] expected, UnaryOperator<Stream<String>> change)
      throws IOException {
    Path table = Files.write(folder.resolve("table.bin"), expected);
    List<String> words = new ArrayList<>(List.of("--elf", elf.toString()));
    words.addAll(List.of("--table", table.toString()));
    List<String> options = new FirmwareProof(job.project().rig()).options(job.scenes().get(0));
    words.addAll(change.apply(options.stream()).toList());
    OutsideTools.Result result = prover.run(folder, words.toArray(String[]::new));
    return new Report(new String(result.out(), StandardCharsets.UTF_8) + result.errors());
  }
}
