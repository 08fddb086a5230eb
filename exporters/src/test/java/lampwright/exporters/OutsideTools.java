package lampwright.exporters;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * Programs outside the project that tests check against.
 *
 * <p>A test that needs one which is not installed is left out, and says in plain words which Debian
 * package brings it. Where the environment variable or system property {@value #REQUIRE} is 1, as
 * in CI, it fails instead.
 */
public final class OutsideTools {
  /** The environment variable or system property that makes every tool a must. */
  public static final String REQUIRE = "LAMPWRIGHT_REQUIRE_TOOLS";

  private static final long TIMEOUT_SECONDS = 600;

  private final List<Path> folders;
  private final boolean required;
  private final Consumer<String> report;
  private final Set<String> said = ConcurrentHashMap.newKeySet();
  private final Set<String> headersFound = ConcurrentHashMap.newKeySet();

  OutsideTools(List<Path> folders, boolean required, Consumer<String> report) {
    this.report = report;
    this.folders = List.copyOf(folders);
    this.required = required;
  }

  /** The tools on this machine's search path, none of which is a must, not even in CI. */
  public static OutsideTools optional() {
    return onThisMachine(false);
  }

  /** The tools on this machine's search path. */
  public static OutsideTools onThisMachine() {
    String require = System.getProperty(REQUIRE, System.getenv().getOrDefault(REQUIRE, ""));
    return onThisMachine(require.equals("1"));
  }

  private static OutsideTools onThisMachine(boolean required) {
    Map<String, String> environment = System.getenv();
    String path = environment.getOrDefault("PATH", "");
    List<Path> folders =
        Arrays.stream(path.split(File.pathSeparator, -1))
            .filter(folder -> !folder.isEmpty())
            .map(Path::of)
            .toList();
    return new OutsideTools(folders, required, System.out::println);
  }

  /**
   * A program.
   *
   * @param command its name without folder
   * @param debianPackage what to install for it
   */
  public Tool find(String command, String debianPackage) {
    Optional<Path> program =
        folders.stream()
            .map(folder -> folder.resolve(command))
            .filter(file -> Files.isRegularFile(file) && Files.isExecutable(file))
            .findFirst();
    if (program.isEmpty()) {
      leaveOut(command, debianPackage);
    }
    return new Tool(program.orElseThrow());
  }

  /** The compilers and libraries that build firmware and run it on a simulated controller. */
  public void findSimulator() {
    findCompiler("gcc", "gcc", "simavr/sim_avr.h", "libsimavr-dev");
    findCompiler("gcc", "gcc", "gelf.h", "libelf-dev");
    findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
  }

  /**
   * A C compiler with a library whose header a test needs.
   *
   * @param compilerPackage what to install for the compiler
   * @param header such as {@code avr/pgmspace.h}
   * @param headerPackage what to install for the library
   */
  public Tool findCompiler(
      String command, String compilerPackage, String header, String headerPackage) {
    Tool compiler = find(command, compilerPackage);
    if (headersFound.contains(command + " " + header)) {
      return compiler;
    }
    try {
      Path probe = Files.createTempFile("probe", ".c");
      try {
        Files.writeString(probe, "#include <" + header + ">\n");
        if (compiler.run(probe.getParent(), "-E", probe.toString()).exit() != 0) {
          leaveOut("<" + header + "> for " + command, headerPackage);
        }
      } finally {
        Files.delete(probe);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    headersFound.add(command + " " + header);
    return compiler;
  }

  /**
   * Looks for a file that a package brings, such as sources to compile against.
   *
   * @param file where Debian puts it
   * @param debianPackage what to install for it
   */
  public void findFile(Path file, String debianPackage) {
    if (!Files.isRegularFile(file)) {
      leaveOut(file.toString(), debianPackage);
    }
  }

  /**
   * Node and a package of npm's that a folder of test sources names.
   *
   * @param folder with package.json and package-lock.json
   */
  public Tool findNode(Path folder, String npmPackage) {
    Tool node = find("node", "nodejs");
    Path file = folder.resolve("node_modules").resolve(npmPackage).resolve("package.json");
    if (!Files.isRegularFile(file)) {
      leaveOut(npmPackage + " is not installed; npm ci in " + folder + " brings it");
    }
    return node;
  }

  private void leaveOut(String what, String debianPackage) {
    leaveOut(what + " is not installed; the Debian package " + debianPackage + " brings it");
  }

  private void leaveOut(String message) {
    if (required) {
      Assertions.fail(message + ", and " + REQUIRE + "=1 asks for it");
    }
    if (said.add(message)) {
      // Build tools count left out tests but do not say why.
      report.accept("Tests left out: " + message + ".");
    }
    Assumptions.abort("left out: " + message);
  }

  /** A program that is there. */
  public record Tool(Path program) {
    /** Runs it to its end with a folder as working directory. */
    public Result run(Path folder, String... arguments) {
      List<String> command = new ArrayList<>(List.of(program.toString()));
      command.addAll(List.of(arguments));
      try {
        Path out = Files.createTempFile("tool", ".out");
        Path err = Files.createTempFile("tool", ".err");
        try {
          Process process =
              new ProcessBuilder(command)
                  .directory(folder.toFile())
                  .redirectInput(ProcessBuilder.Redirect.from(new File(nullDevice())))
                  .redirectOutput(out.toFile())
                  .redirectError(err.toFile())
                  .start();
          if (!process.waitFor(TIMEOUT_SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError(command + " did not end in " + TIMEOUT_SECONDS + " s");
          }
          String errors = Files.readString(err, StandardCharsets.ISO_8859_1);
          return new Result(command, process.exitValue(), Files.readAllBytes(out), errors);
        } finally {
          Files.delete(out);
          Files.delete(err);
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new AssertionError(command + " was interrupted", e);
      }
    }

    private static String nullDevice() {
      return File.separatorChar == '\\' ? "NUL" : "/dev/null";
    }
  }

  /** What a program did. */
  public static final class Result {
    private final List<String> command;
    private final int exit;
    private final byte[] out;
    private final String errors;

    Result(List<String> command, int exit, byte[] out, String errors) {
      this.command = command;
      this.exit = exit;
      this.out = out;
      this.errors = errors;
    }

    public int exit() {
      return exit;
    }

    /** What it wrote to standard output. */
    public byte[] out() {
      return out.clone();
    }

    /** What it wrote to standard error. */
    public String errors() {
      return errors;
    }

    /** Asserts that it ended well and had nothing to say on standard error. */
    public byte[] quietOut() {
      Assertions.assertEquals("", errors, () -> "standard error of " + command);
      Assertions.assertEquals(0, exit, () -> "exit code of " + command);
      return out();
    }
  }
}
