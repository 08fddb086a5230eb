package lampwright.engine.situation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Recorded drives, whole and damaged, the same in every run. DEVELOPERS.md tells how to go on. */
class DriveFuzzTest {
  private static final Path SEEDS = Path.of("src/test/resources/lampwright/engine/situation/fuzz");
  private static final int ROUNDS = 2000;

  @Test
  void damagedDrivesGiveADriveOrProblems() throws IOException {
    List<Path> seeds;
    try (Stream<Path> all = Files.list(SEEDS)) {
      seeds = all.sorted().toList();
    }
    assertThat(seeds).hasSize(4);
    Random random = new Random(38);
    for (Path seed : seeds) {
      byte[] whole = Files.readAllBytes(seed);
      FuzzDrive.fuzzerTestOneInput(whole);
      for (int round = 0; round < ROUNDS; round++) {
        byte[] damaged = Arrays.copyOf(whole, 1 + random.nextInt(whole.length));
        for (int i = random.nextInt(4); i >= 0; i--) {
          // Bytes of the grammar as often as any, or little gets past the first field.
          damaged[random.nextInt(damaged.length)] =
              random.nextBoolean()
                  ? (byte) ",.\n\r019-eE \"".charAt(random.nextInt(12))
                  : (byte) random.nextInt();
        }
        FuzzDrive.fuzzerTestOneInput(damaged);
      }
    }
  }
}
