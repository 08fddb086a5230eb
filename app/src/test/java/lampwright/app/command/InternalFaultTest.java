package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import lampwright.exporters.ExportRefusedException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine.Command;

/** No command ends in a stack trace, whatever it throws. */
class InternalFaultTest {
  @Command(name = "failing")
  private static final class Failing implements Callable<Integer> {
    private final Throwable fault;

    Failing(Throwable fault) {
      this.fault = fault;
    }

    @Override
    public Integer call() throws Exception {
      if (fault instanceof Error error) {
        throw error;
      }
      throw (Exception) fault;
    }
  }

  @AfterEach
  void quietAgain() {
    System.clearProperty(InternalFault.TRACE);
  }

  static List<Throwable> faults() {
    return List.of(
        new IllegalStateException("wheels\nfell \u001b[31moff"),
        new IllegalStateException(),
        new NullPointerException(),
        new IllegalArgumentException("bad", new ArithmeticException("/ by zero")),
        new ExceptionInInitializerError(new IllegalStateException("static")),
        new NoClassDefFoundError("lampwright/Missing"),
        new AssertionError("never"),
        new OutOfMemoryError("Java heap space"),
        new CancellationException("rendering was interrupted"),
        new InterruptedException(),
        overflow());
  }

  private static StackOverflowError overflow() {
    try {
      return deeper(0);
    } catch (StackOverflowError real) {
      return real;
    }
  }

  @SuppressWarnings("InfiniteRecursion") // What is wanted here.
  private static StackOverflowError deeper(int depth) {
    return deeper(depth + 1);
  }

  @ParameterizedTest
  @MethodSource("faults")
  void anyFaultIsOneLineAndExitCode3(Throwable fault) {
    Run run = run(fault);
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).startsWith("lampwright: ").doesNotContain("\u001b").endsWith("\n");
  }

  @Test
  void lineNamesTheFirstCauseAndThePlaceAndWhoseFaultItIs() {
    String line = run(new RuntimeException("outer", new IllegalStateException("inner"))).err();
    assertThat(line)
        .matches(
            "lampwright: internal fault: IllegalStateException, inner, in InternalFaultTest.java"
                + " line \\d+; this is a fault of the program, please report it"
                + " \\(LAMPWRIGHT_JAVA_OPTIONS=-Dlampwright.trace=true shows more\\)\n");
  }

  @Test
  void usedUpMemoryIsToldWithARemedy() {
    assertThat(run(new OutOfMemoryError()).err())
        .isEqualTo(
            "lampwright: out of memory: give it more, such as LAMPWRIGHT_JAVA_OPTIONS=-Xmx4g, or"
                + " divide the project\n");
  }

  @Test
  void stackTraceIsShownWhereItIsAskedFor() {
    System.setProperty(InternalFault.TRACE, "true");
    assertThat(run(new IllegalStateException("wheels")).err())
        .contains("java.lang.IllegalStateException: wheels")
        .contains("\tat lampwright.app.command.InternalFaultTest");
  }

  @Test
  void causesInACircleEnd() {
    RuntimeException one = new RuntimeException("one");
    RuntimeException two = new RuntimeException("two", one);
    one.initCause(two);
    assertThat(run(one).err().lines()).hasSize(1);
  }

  @Test
  void knownFaultsKeepTheirWords() {
    Run refused = run(new ExportRefusedException("packed", "road", List.of()));
    assertThat(refused.code()).isEqualTo(1);
    Run unread = run(new UncheckedIOException(new java.io.IOException("disk: full")));
    assertThat(unread.code()).isEqualTo(3);
    assertThat(unread.err()).isEqualTo("lampwright: disk: full\n");
  }

  /** No stream to write to, before there is a command line. */
  @Test
  void faultBeforeTheCommandLineIsOneLineToo() {
    PrintStream out = System.out;
    PrintStream before = System.err;
    Thread.UncaughtExceptionHandler handler = Thread.getDefaultUncaughtExceptionHandler();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    System.setErr(new PrintStream(err, true, StandardCharsets.UTF_8));
    System.setOut(null);
    try {
      assertThat(CommandLineProgram.runOnSystemStreams("check")).isEqualTo(3);
    } finally {
      System.setOut(out);
      System.setErr(before);
      Thread.setDefaultUncaughtExceptionHandler(handler);
    }
    assertThat(err.toString(StandardCharsets.UTF_8).lines()).hasSize(1);
  }

  /** A terminal that names an encoding that Java does not know is written to in UTF-8. */
  @Test
  void encodingThatDoesNotExistIsNoFault() {
    String encoding = System.getProperty("stdout.encoding");
    System.setProperty("stdout.encoding", "no-such-encoding");
    try {
      assertThat(Terminal.encoding("stdout.encoding")).isEqualTo(StandardCharsets.UTF_8);
    } finally {
      if (encoding == null) {
        System.clearProperty("stdout.encoding");
      } else {
        System.setProperty("stdout.encoding", encoding);
      }
    }
  }

  private static Run run(Throwable fault) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    Terminal terminal = new Terminal(new PrintWriter(out), new PrintWriter(err), false);
    int code = CommandLineProgram.on(terminal, new Failing(fault)).run();
    return new Run(code, out.toString(), err.toString());
  }
}
