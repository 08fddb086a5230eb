package lampwright.app.startup;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The archive of loaded classes that the launcher starts the JVM with (decision 42): the archive
 * itself, and beside it the key of what it was made for. The launcher names both by one path
 * without an ending.
 *
 * <p>The JVM looks after itself that it takes no archive of another version or of other jars; the
 * key is there so that such an archive is made anew.
 *
 * @param base the path without an ending
 */
record StartArchive(Path base) {
  /** The system property by which the launcher names it. */
  static final String PROPERTY = "lampwright.archive";

  /** The system property by which the launcher names the list that this process writes. */
  static final String LIST_PROPERTY = "lampwright.classes";

  private static final String FORM = "1";

  private static final String KEY_ENDING = ".key";

  /** A jar, and its size and time, as a key has them. */
  private static final Pattern JAR_LINE = Pattern.compile("(.+\\.jar) (?:\\d+ \\d+|none)");

  /** That of this process, if it was started with one. */
  static Optional<StartArchive> ofThisProcess() {
    return path(PROPERTY).map(StartArchive::new);
  }

  /** The list of loaded classes that this process writes, if it does. */
  static Optional<Path> listOfThisProcess() {
    return path(LIST_PROPERTY);
  }

  /** Whether this process is started as the window is: JavaFX wants to be on the module path. */
  static boolean ofWindow() {
    return !System.getProperty("jdk.module.path", "").isEmpty();
  }

  /** Whether it is that of the commands that are over soon, as the launcher names it. */
  boolean ofShortCommands() {
    return base.getFileName().toString().startsWith("short-");
  }

  private static Optional<Path> path(String property) {
    String text = System.getProperty(property, "");
    try {
      Path path = Path.of(text);
      return path.isAbsolute() ? Optional.of(path) : Optional.empty();
    } catch (InvalidPathException noPath) {
      return Optional.empty();
    }
  }

  /** What the JVM is given with {@code -XX:SharedArchiveFile}. */
  Path archive() {
    return with(".jsa");
  }

  /** What Java 25 and later are given with {@code -XX:AOTCache}. */
  Path cache() {
    return with(".aot");
  }

  /** Where all of it is. */
  Path folder() {
    return base.toAbsolutePath().getParent();
  }

  /** Held by who makes it. */
  Path lock() {
    return with(".lock");
  }

  /** Where it is made. */
  Path workshop() {
    return with(".making");
  }

  /**
   * Removes the archives beside this one that were made for program folders of which no jar is
   * there any more: each takes some 30 MB.
   */
  void removeOthersOfNoUse() throws IOException {
    List<Path> keys;
    try (Stream<Path> files = Files.list(folder())) {
      keys = files.filter(file -> file.toString().endsWith(KEY_ENDING)).toList();
    }
    for (Path key : keys) {
      String name = key.getFileName().toString();
      String other = name.substring(0, name.length() - KEY_ENDING.length());
      if (!key.equals(keyFile()) && noneIsThere(jarsOf(Files.readAllLines(key)))) {
        new StartArchive(key.resolveSibling(other)).remove();
      }
    }
  }

  private void remove() throws IOException {
    // The key last, so that what could not be removed is found again.
    for (Path file : List.of(archive(), cache(), lock(), keyFile())) {
      Files.deleteIfExists(file);
    }
  }

  /** The paths in a key's lines; empty if it is of another form. */
  private static List<String> jarsOf(List<String> lines) {
    if (lines.isEmpty() || !lines.get(0).equals(FORM)) {
      return List.of();
    }
    return lines.stream()
        .map(JAR_LINE::matcher)
        .filter(Matcher::matches)
        .map(line -> line.group(1))
        .toList();
  }

  private static boolean noneIsThere(List<String> jars) {
    return !jars.isEmpty() && jars.stream().noneMatch(jar -> new File(jar).exists());
  }

  private Path keyFile() {
    return with(KEY_ENDING);
  }

  private Path with(String ending) {
    return base.resolveSibling(base.getFileName() + ending);
  }

  /** Whether it was made, or could not be made, for this Java and these jars. */
  boolean current(String key) {
    try {
      return Files.readString(keyFile()).equals(key);
    } catch (IOException unreadable) {
      return false;
    }
  }

  /** Has it be current. */
  void keep(String key) throws IOException {
    Path written = workshop().resolve("key");
    Files.writeString(written, key);
    Files.move(
        written, keyFile(), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** What an archive depends on: the JVM, and every jar by its place, size and time. */
  static String key() {
    StringBuilder key = new StringBuilder(FORM);
    for (String name :
        List.of("java.home", "java.vm.vendor", "java.vm.version", "os.arch", "java.class.path")) {
      key.append('\n').append(System.getProperty(name, ""));
    }
    for (Path jar : jars()) {
      key.append('\n').append(jar);
      try {
        key.append(' ').append(Files.size(jar));
        key.append(' ').append(Files.getLastModifiedTime(jar).toMillis());
      } catch (IOException gone) {
        key.append(" none");
      }
    }
    return key.append('\n').toString();
  }

  private static List<Path> jars() {
    List<Path> jars = new ArrayList<>();
    String path = System.getProperty("java.class.path", "");
    for (String jar : path.split(File.pathSeparator, -1)) {
      if (!jar.isEmpty()) {
        jars.add(Path.of(jar));
      }
    }
    String modules = System.getProperty("jdk.module.path", "");
    if (!modules.isEmpty()) {
      File[] inFolder = new File(modules).listFiles();
      for (File jar : inFolder == null ? new File[0] : inFolder) {
        jars.add(jar.toPath());
      }
      jars.sort(null);
    }
    return jars;
  }
}
