package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Commands that README, pages and help print: those with a sample run as they are printed. */
class PrintedCommandsTest {
  private static final Path TOP = Path.of("..");
  private static final Pattern COMMAND = Pattern.compile("^ +lampwright [a-z]+ .*$");
  private static final Pattern OPTION = Pattern.compile("--[a-z0-9-]+");

  /** Of every command, or tested as a whole elsewhere. */
  private static final Set<String> NOT_LISTED = Set.of("--help", "--version");

  @TempDir private Path folder;

  private static Stream<String> pages() throws IOException {
    List<Path> pages = new ArrayList<>(List.of(TOP.resolve("README.md")));
    for (String name : List.of("docs", "docs/guide")) {
      try (Stream<Path> found = Files.list(TOP.resolve(name))) {
        found.filter(page -> page.toString().endsWith(".md")).sorted().forEach(pages::add);
      }
    }
    List<String> lines = new ArrayList<>();
    for (Path page : pages) {
      lines.addAll(Files.readAllLines(page));
    }
    return lines.stream();
  }

  private static Stream<String> help(String command) {
    Run run = Run.of(command, "--help");
    assertThat(run.code()).as(command).isZero();
    // A line that would be too long goes on after a backslash.
    return run.out().replaceAll("\\\\\\R +", "").lines();
  }

  private static List<String> commands() {
    return Commands.of(
            new Terminal(
                new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()), false))
        .getSubcommands()
        .keySet()
        .stream()
        .toList();
  }

  private String word(String word) {
    if (word.startsWith("samples/")) {
      return TOP.resolve(word).toString();
    }
    boolean output = word.endsWith("out") || word.matches("[a-z-]+\\.(pdf|html|png|svg|gif|bin)");
    return output ? folder.resolve(word).toString() : word;
  }

  /**
   * {@code prove} has tests of its own on a sample, each of which takes as long as all of these;
   * {@code live} needs a controller, {@code open} a screen.
   */
  @Test
  void thoseWithASampleRun() throws IOException {
    Set<String> printed = new TreeSet<>();
    Stream.concat(pages(), commands().stream().flatMap(PrintedCommandsTest::help))
        .filter(line -> COMMAND.matcher(line).matches())
        .map(String::strip)
        .filter(line -> line.contains("samples/") && !line.contains("NAME"))
        .filter(line -> !line.matches("lampwright (open|prove|live) .*"))
        .forEach(printed::add);
    assertThat(printed).hasSizeGreaterThan(8);
    for (String line : printed) {
      Object[] words = Arrays.stream(line.split(" ", -1)).skip(1).map(this::word).toArray();
      Run run = Run.of(words);
      assertThat(run.code()).as(line + ": " + run.err()).isZero();
    }
  }

  /** What README lists of each command is what it takes, no more and no less. */
  @Test
  void readmeListsTheOptionsThatThereAre() throws IOException {
    List<String> lines = Files.readAllLines(TOP.resolve("README.md"));
    for (String command : commands()) {
      if (command.equals("open")) {
        continue;
      }
      int at = 0;
      while (!lines.get(at).startsWith("    lampwright " + command + " ")) {
        at++;
      }
      int end = at + 1;
      while (lines.get(end).startsWith("     ")) {
        end++;
      }
      Set<String> listed = options(String.join(" ", lines.subList(at, end)));
      Set<String> taken =
          options(help(command).takeWhile(l -> !l.isBlank()).collect(Collectors.joining(" ")));
      taken.removeAll(NOT_LISTED);
      assertThat(listed).as(command).isEqualTo(taken);
    }
  }

  private static Set<String> options(String text) {
    return OPTION
        .matcher(text)
        .results()
        .map(r -> r.group())
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
