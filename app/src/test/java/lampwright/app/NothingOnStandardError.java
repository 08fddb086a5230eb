package lampwright.app;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Fails a test of the window that leaves an exception or a warning of the toolkit on standard
 * error. It is found by itself (see META-INF/services), so no test can forget it.
 */
public final class NothingOnStandardError
    implements BeforeAllCallback, BeforeEachCallback, AfterEachCallback {
  private static final String WINDOW = "lampwright.app.workshop.view";

  /** A stack trace, an exception on a line of its own, or a style that could not be applied. */
  private static final Pattern TROUBLE =
      Pattern.compile(
          "(?m)^\\s+at [\\w.$/]+\\(|\\b\\w*(Exception|Error)\\b|CssStyleHelper|Could not resolve");

  private static final ByteArrayOutputStream SEEN = new ByteArrayOutputStream();

  static {
    // Before a logger keeps the stream.
    PrintStream before = System.err;
    OutputStream both =
        new OutputStream() {
          @Override
          public void write(int b) {
            before.write(b);
            SEEN.write(b);
          }

          @Override
          public void write(byte[] bytes, int from, int count) {
            before.write(bytes, from, count);
            SEEN.write(bytes, from, count);
          }
        };
    System.setErr(new PrintStream(both, true, StandardCharsets.UTF_8));
  }

  @Override
  public void beforeAll(ExtensionContext context) {
    // The streams are taken over once this class is there.
  }

  @Override
  public void beforeEach(ExtensionContext context) {
    SEEN.reset();
  }

  @Override
  public void afterEach(ExtensionContext context) {
    String seen = SEEN.toString(StandardCharsets.UTF_8);
    if (ofTheWindow(context) && !trouble(seen).isEmpty()) {
      throw new AssertionError("on standard error: " + seen);
    }
  }

  private static boolean ofTheWindow(ExtensionContext context) {
    return context
        .getTestClass()
        .filter(test -> test.getPackageName().startsWith(WINDOW))
        .isPresent();
  }

  /** The lines that no test of the window may leave. */
  static List<String> trouble(String seen) {
    return seen.lines().filter(line -> TROUBLE.matcher(line).find()).toList();
  }
}
