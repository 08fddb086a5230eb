package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Files made to cost more than their size. Work is counted in bytes that the reader allocates,
 * which are the same on a slow machine; the time is only so long that no machine needs it.
 */
class FloodTest {
  private static final Duration NEVER = Duration.ofMinutes(20);
  private static final String START =
      "{\"lampwright\": 1, \"rig\": {\"outputs\": [{\"id\": \"o\"}]";

  /** What a file cost: bytes allocated while it was read. */
  private record Cost(long bytes, List<String> problems) {
    static Cost of(String json) {
      byte[] file = json.getBytes(UTF_8);
      ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
      return assertTimeoutPreemptively(
          NEVER,
          () -> {
            long thread = Thread.currentThread().getId();
            long before = threads.getThreadAllocatedBytes(thread);
            ReadResult read = ProjectReader.read("p", file);
            long bytes = threads.getThreadAllocatedBytes(thread) - before;
            assertThat(read.project()).isEqualTo(Optional.empty());
            return new Cost(bytes, read.problems().stream().map(Problem::text).toList());
          });
    }
  }

  private static String unknownFields(int count) {
    return START
        + "}, "
        + IntStream.range(0, count)
            .mapToObj(i -> "\"s" + i + "\": 1")
            .collect(Collectors.joining(", "))
        + "}";
  }

  private static String times(int count, String member) {
    return "[" + (member + ",").repeat(count - 1) + member + "]";
  }

  @Test
  void unknownFieldsCostAsManyAsThereAre() {
    Cost.of(unknownFields(1_000));
    Cost few = Cost.of(unknownFields(10_000));
    Cost many = Cost.of(unknownFields(40_000));

    assertThat(many.problems()).hasSize(ReadResult.MAX_PROBLEMS);
    assertThat((double) many.bytes() / few.bytes()).isLessThan(6);
    assertThat(many.bytes()).isLessThan(40_000L * 4_000);
  }

  @Test
  void misspeltFieldAmongManyIsStillSuggested() {
    String json = unknownFields(100).replace("\"s7\":", "\"sences\":");

    assertThat(Cost.of(json).problems())
        .anyMatch(text -> text.startsWith("sences: ") && text.endsWith("mean \"scenes\"?"));
  }

  /** Where a list may stand, how many of its members a file can have, and what is said of them. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      value = {
        "}, 'scenes': *}~{}~999000~scenes: 999000 scenes~must be at most 1,000",
        "}, 'pixelTypes': *}~{}~999000~pixelTypes: 999000 pixel types~must be at most 256",
        "}, 'pictures': *}~{}~999000~pictures: 999000 pictures~must be at most 4",
        ", 'chains': *}}~{}~999000~rig.chains: 999000 chains~must be at most 64",
        ", 'lamps': *}}~{}~999000~rig.lamps: 999000 lamps~must be at most 4,096",
        ", 'lamps': [{'id': 'a', 'pixels': *}]}}~{}~999000~rig.lamps[0].pixels: 999000 runs of"
            + " pixels~must be between 1 and 4,096",
        "}, 'scenes': [{'id': 'a', 'tracks': *}]}~{}~999000~scenes[0].tracks: 999000 tracks~must"
            + " be at most 4,096",
        "}, 'scenes': [{'tracks': [{'lamps': *}]}]}~\"a\"~999000~scenes[0].tracks[0].lamps: 999000"
            + " lamps~must be between 1 and 4,096",
        "}, 'scenes': [{'tracks': [{'cues': *}]}]}~{}~999000~scenes[0].tracks[0].cues: 999000"
            + " cues~must be at most 100,000",
        "}, 'scenes': [{'tracks': [{'cues': [{'pattern': {'kind': 'keyframes', 'frames': *}}]}]}]}"
            + "~{}~999000~scenes[0].tracks[0].cues[0].pattern.frames: 999000 keyframes~must be between 1"
            + " and 100,000",
        "}, 'scenes': [{'tracks': [{'cues': [{'pattern': {'kind': 'rotating-beacon', 'angles': *}}]"
            + "}]}]}~1~999000~scenes[0].tracks[0].cues[0].pattern.angles: 999000 angles~must be at most"
            + " 262,144"
      })
  void listPastItsLimitIsReportedAndNoMoreOfItIsRead(
      String around, String member, int count, String problem, String allowed) {
    String tail = around.replace("*", times(count, member.replace('\'', '"'))).replace('\'', '"');

    Cost cost = Cost.of(START + tail);

    assertThat(cost.problems())
        .anyMatch(text -> text.startsWith(problem) && text.endsWith(": " + allowed));
    assertThat(cost.bytes())
        .as(String.format(Locale.ROOT, "%,d", cost.bytes()))
        .isLessThan(700L << 20);
  }

  @Test
  void emptyCuesOfManyTracksAreBoundedByTheValuesOfAFile() {
    String track = "{\"cues\": " + times(99_000, "{}") + "}";

    Cost cost = Cost.of(START + "}, \"scenes\": [{\"tracks\": " + times(10, track) + "}]}");

    assertThat(cost.problems()).hasSize(ReadResult.MAX_PROBLEMS);
  }
}
