package lampwright.app.command;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * One run of the command line in this process.
 *
 * @param code its exit code
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 */
record Run(int code, String out, String err) {
  /** The folder of the samples. */
  static final Path SAMPLES = Path.of("..", "samples");

  static Run of(Object... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    Terminal terminal = new Terminal(new PrintWriter(out), new PrintWriter(err), false);
    String[] arguments = Arrays.stream(words).map(Object::toString).toArray(String[]::new);
    int code = CommandLineProgram.on(terminal).run(arguments);
    return new Run(code, out.toString(), err.toString());
  }

  static Path sample(String name) {
    return SAMPLES.resolve(name + ".lampwright.json");
  }
}
