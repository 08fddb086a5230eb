package lampwright.app.workshop.disk;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Where a user's state is kept: {@code $XDG_STATE_HOME/lampwright} as the XDG Base Directory
 * Specification has it, or the place that Windows and macOS give to such files.
 */
public final class StateFolder {
  /** The system property that names another folder. */
  public static final String PROPERTY = "lampwright.state";

  private StateFolder() {}

  /** The folder of this user on this machine. */
  public static Path ofUser() {
    return of(name -> System.getProperty(name), name -> System.getenv(name));
  }

  /** The folder by these system properties and environment variables. */
  static Path of(
      UnaryOperator<@Nullable String> properties, UnaryOperator<@Nullable String> environment) {
    Path home = Path.of(Optional.ofNullable(properties.apply("user.home")).orElse("."));
    Optional<Path> named = absolute(properties.apply(PROPERTY));
    if (named.isPresent()) {
      return named.get();
    }
    String system =
        Optional.ofNullable(properties.apply("os.name")).orElse("").toLowerCase(Locale.ROOT);
    if (system.startsWith("windows")) {
      return absolute(environment.apply("LOCALAPPDATA"))
          .orElse(home.resolve("AppData").resolve("Local"))
          .resolve("Lampwright");
    }
    if (system.startsWith("mac")) {
      return home.resolve("Library").resolve("Application Support").resolve("Lampwright");
    }
    return absolute(environment.apply("XDG_STATE_HOME"))
        .orElse(home.resolve(".local").resolve("state"))
        .resolve("lampwright");
  }

  // The specification has relative paths ignored.
  private static Optional<Path> absolute(@Nullable String text) {
    if (text == null || text.isBlank()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Path.of(text)).filter(Path::isAbsolute);
    } catch (InvalidPathException noPath) {
      return Optional.empty();
    }
  }
}
