package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import lampwright.engine.check.SafeText;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Whatever happens to a file, reading it gives a project or problems. */
class MutatedFileTest {
  private static final Pattern TOKEN =
      Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"|[-+.0-9eE]+|[a-z]+|[\\[\\]{},:]");

  private final String base;

  MutatedFileTest() throws IOException {
    base = ReadRejectionTest.resource("formatted.lampwright.json");
  }

  @Property(tries = 300, seed = "1")
  void flippedBytesGiveProblemsOrAProject(@ForAll Random random) {
    byte[] bytes = base.getBytes(UTF_8);
    for (int i = random.nextInt(4); i >= 0; i--) {
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    }
    check(bytes);
  }

  @Property(tries = 200, seed = "2")
  void cutFilesGiveProblems(@ForAll Random random) {
    byte[] bytes = base.getBytes(UTF_8);
    byte[] cut = Arrays.copyOf(bytes, random.nextInt(bytes.length - 2));

    check(cut);
    assertThat(ProjectReader.read("p", cut).project()).isEmpty();
  }

  @Property(tries = 600, seed = "3")
  void swappedTokensGiveProblemsOrAProject(@ForAll Random random) {
    check(swapTokens(base, random).getBytes(UTF_8));
  }

  @Example
  void unchangedFileGivesAProject() {
    assertThat(ProjectReader.read("p", base.getBytes(UTF_8)).project()).isPresent();
  }

  /** The text with up to three of its tokens replaced by others of it. */
  static String swapTokens(String base, Random random) {
    List<MatchResult> tokens = TOKEN.matcher(base).results().toList();
    List<String> words = new ArrayList<>(tokens.stream().map(MatchResult::group).toList());
    for (int i = random.nextInt(3); i >= 0; i--) {
      int at = random.nextInt(words.size());
      String other = words.get(random.nextInt(words.size()));
      // Values for values keep the file JSON, which reaches further.
      boolean punctuation =
          words.get(at).length() == 1 && !Character.isDigit(words.get(at).charAt(0));
      words.set(at, punctuation && random.nextInt(8) > 0 ? words.get(at) : other);
    }
    return String.join(" ", words);
  }

  private static void check(byte[] bytes) {
    FuzzRead.fuzzerTestOneInput(bytes);
    ReadResult read = ProjectReader.read("p", bytes);

    boolean errors = !read.problems().isEmpty();
    assertThat(read.project().isPresent()).isEqualTo(!errors);
    for (Problem problem : read.problems()) {
      assertThat(problem.position().line()).isPositive();
      assertThat(problem.position().column()).isPositive();
      assertThat(problem.text().codePoints().allMatch(SafeText::plain)).as(problem.text()).isTrue();
    }
  }
}
