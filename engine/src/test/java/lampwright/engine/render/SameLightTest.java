package lampwright.engine.render;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;

/**
 * The bytes of random scenes against digests (CRC-32) that the first renderer gave, which took
 * every step as DESIGN.md has it: BigInteger for times, StrictMath for every power, one slot at a
 * time. {@code -Dlampwright.writeDigests=FILE} writes them, after a change that is meant to change
 * bytes.
 */
class SameLightTest {
  private static final int SCENES = 3000;

  @Test
  void bytesOfRandomScenesAreTheSameForEver() throws IOException {
    List<String> digests = new ArrayList<>();
    for (long seed = 0; seed < SCENES; seed++) {
      digests.add(String.format("%08x", digest(RandomScenes.table(seed))));
    }
    String write = System.getProperty("lampwright.writeDigests");
    if (write != null) {
      Files.write(Path.of(write), digests);
    }
    assertThat(digests).isEqualTo(kept());
  }

  private static List<String> kept() throws IOException {
    try (var stream = SameLightTest.class.getResourceAsStream("light-digests.txt")) {
      return new String(Objects.requireNonNull(stream).readAllBytes(), US_ASCII).lines().toList();
    }
  }

  static long digest(FrameTable table) {
    CRC32 crc = new CRC32();
    byte[] frame = new byte[table.layout().bytes()];
    for (FrameCursor cursor = table.cursor(); cursor.hasNext(); ) {
      cursor.next(frame);
      crc.update(frame);
    }
    return crc.getValue();
  }
}
