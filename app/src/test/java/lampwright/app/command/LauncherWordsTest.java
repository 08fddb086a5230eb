package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The start scripts know every command: what they don't know they take for a project to open. */
class LauncherWordsTest {
  private static final Path SCRIPTS = Path.of("src/main/dist/bin");

  private static Set<String> commands() {
    PrintWriter nowhere = new PrintWriter(new StringWriter());
    Set<String> commands =
        new TreeSet<>(Commands.of(new Terminal(nowhere, nowhere, false)).getSubcommands().keySet());
    // It opens the window.
    assertThat(commands.remove("open")).isTrue();
    return commands;
  }

  private static Set<String> words(String script, String list) throws IOException {
    Set<String> words = new TreeSet<>();
    Matcher lists = Pattern.compile(list).matcher(Files.readString(SCRIPTS.resolve(script)));
    while (lists.find()) {
      words.addAll(Set.of(lists.group(1).trim().split("[ |]+")));
    }
    words.removeIf(word -> word.startsWith("-"));
    return words;
  }

  @Test
  void shellScriptKnowsEveryCommand() throws IOException {
    assertThat(words("lampwright", "(?m)^  ((?:[a-z]+ \\| )+[a-z-]+\\*?)\\)"))
        .isEqualTo(commands());
  }

  @Test
  void windowsScriptKnowsEveryCommand() throws IOException {
    assertThat(words("lampwright.bat", "for %%c in \\(([^)]+)\\)")).isEqualTo(commands());
  }
}
