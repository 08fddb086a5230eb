package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Heads of pictures, whole and damaged, the same in every run. DEVELOPERS.md tells how to go on.
 */
class PictureFuzzTest {
  private static final Path SEEDS = Path.of("src/test/resources/lampwright/app/workshop/edit/fuzz");
  private static final int ROUNDS = 2000;

  @Test
  void damagedHeadsGiveASizeOrNone() throws IOException {
    List<Path> seeds;
    try (Stream<Path> all = Files.list(SEEDS)) {
      seeds = all.sorted().toList();
    }
    assertThat(seeds).hasSize(3);
    Random random = new Random(11);
    for (Path seed : seeds) {
      byte[] whole = Files.readAllBytes(seed);
      FuzzPicture.fuzzerTestOneInput(whole);
      for (int round = 0; round < ROUNDS; round++) {
        byte[] damaged = Arrays.copyOf(whole, 1 + random.nextInt(whole.length));
        for (int i = random.nextInt(4); i >= 0; i--) {
          damaged[random.nextInt(damaged.length)] = (byte) random.nextInt();
        }
        FuzzPicture.fuzzerTestOneInput(damaged);
      }
    }
  }
}
