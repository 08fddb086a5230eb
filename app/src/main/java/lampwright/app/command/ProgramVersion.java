package lampwright.app.command;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote down. */
final class ProgramVersion implements IVersionProvider {
  @Override
  public String[] getVersion() throws IOException {
    Properties program = new Properties();
    try (InputStream in = ProgramVersion.class.getResourceAsStream("program.properties")) {
      program.load(in);
    }
    return new String[] {
      "lampwright " + program.getProperty("version"),
      "Java " + System.getProperty("java.version") + ", " + System.getProperty("os.name")
    };
  }
}
