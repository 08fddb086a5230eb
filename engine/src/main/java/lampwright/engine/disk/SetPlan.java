package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.google.common.base.Splitter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import lampwright.engine.check.SafeText;

/** What an exchange of files does, step by step, as it is written down before it begins. */
record SetPlan(List<Step> steps) {
  /** What becomes of a file. */
  enum Change {
    /** One that was not there comes. */
    ADD,
    /** One takes the place of another. */
    REPLACE,
    /** One goes. */
    DROP;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * One file.
   *
   * @param name relative to the folder, with {@code /} between the parts
   */
  record Step(Change change, String name) {}

  // What we write is far smaller; anything greater is not ours.
  private static final int MAX_BYTES = 1 << 20;

  private static final String END = "end";

  SetPlan {
    steps = List.copyOf(steps);
  }

  byte[] bytes() {
    StringBuilder text = new StringBuilder();
    steps.forEach(
        step -> text.append(step.change().word()).append(' ').append(step.name()).append('\n'));
    return text.append(END).append('\n').toString().getBytes(UTF_8);
  }

  /**
   * Reads a plan.
   *
   * @throws IOException if it can't be read, or is none that we wrote
   */
  static SetPlan read(Path file) throws IOException {
    String text = RegularFile.text(file, MAX_BYTES);
    List<String> lines = Splitter.on('\n').splitToList(text);
    if (lines.size() < 2 || !lines.get(lines.size() - 2).equals(END)) {
      throw damaged(file);
    }
    List<Step> steps = new ArrayList<>();
    for (String line : lines.subList(0, lines.size() - 2)) {
      steps.add(step(line, file));
    }
    return new SetPlan(steps);
  }

  private static Step step(String line, Path file) throws IOException {
    for (Change change : Change.values()) {
      String word = change.word() + " ";
      if (line.startsWith(word)) {
        try {
          String name = line.substring(word.length());
          checkName(name);
          return new Step(change, name);
        } catch (IllegalArgumentException strange) {
          throw new IOException(damaged(file).getMessage(), strange);
        }
      }
    }
    throw damaged(file);
  }

  private static IOException damaged(Path file) {
    return new IOException(
        FileTroubles.text(file, "could not read: is no plan of Lampwright's; remove it"));
  }

  /**
   * Checks a name of a set: parts of plain characters, none of which leads elsewhere.
   *
   * @throws IllegalArgumentException if it is not so
   */
  static void checkName(String name) {
    boolean plain = !name.startsWith(FileSet.WORK_FOLDER) && name.length() <= 1000;
    for (String part : Splitter.on('/').split(name)) {
      plain &=
          !part.isBlank()
              && !part.equals(".")
              && !part.equals("..")
              && part.chars().noneMatch(c -> c < ' ' || c == '\\' || c == ':' || c == 0x7F);
    }
    if (!plain) {
      throw new IllegalArgumentException(
          "name: " + SafeText.quoted(name) + ": must be the name of a file in the folder");
    }
  }
}
