package lampwright.app.startup;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** How a class of this program is started in a process of its own, by the Java that runs this. */
final class ProgramStart {
  private static final String MODULE = "lampwright.app";

  private ProgramStart() {}

  /** The words of a command line, with the jars that this process has. */
  static List<String> of(Class<?> main, List<String> options) {
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    // Such a process is as short as a command.
    words.add("-XX:TieredStopAtLevel=1");
    words.addAll(options);
    String modules = System.getProperty("jdk.module.path", "");
    if (modules.isEmpty()) {
      words.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
    } else {
      words.addAll(List.of("--module-path", modules, "--module", MODULE + "/" + main.getName()));
    }
    return words;
  }

  /** Starts it without a word on this process's streams; it lives on when this one ends. */
  static Process start(List<String> words, Path folder) throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(words)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(Redirect.DISCARD);
    // Options for the program, such as an agent of a debugger, are none for this.
    builder.environment().remove("JAVA_TOOL_OPTIONS");
    builder.environment().remove("JDK_JAVA_OPTIONS");
    return builder.start();
  }
}
