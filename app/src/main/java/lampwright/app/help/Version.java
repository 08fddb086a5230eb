package lampwright.app.help;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version that the build wrote down. */
public final class Version {
  private Version() {}

  /** Such as {@code 1.2.0}. */
  public static String number() {
    Properties program = new Properties();
    try (InputStream in = Version.class.getResourceAsStream("program.properties")) {
      program.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return program.getProperty("version");
  }
}
