package lampwright.exporters.packed.play;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.base.Splitter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The C player and the decoder with every input of {@code fuzz/}, and with thousands of damaged
 * ones that are the same in every run. DEVELOPERS.md tells how to search on for hours.
 */
@Timeout(value = 1200, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PlayerFuzzTest {
  private static final String SOURCES = "src/main/resources/lampwright/exporters/firmware/src/";
  private static final int ROUNDS = 400;
  private static final int DECODER_ROUNDS = 1000;
  private static final int SEED = 20261129;

  @TempDir Path dir;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "LAMPWRIGHT_COLUMN_BYTES=0",
        "LAMPWRIGHT_COLUMN_BYTES=1",
        "LAMPWRIGHT_COLUMN_BYTES=2",
        "LAMPWRIGHT_LONG_DATA=0"
      })
  void playerStaysInBoundsAndIsDarkAfterAFault(String configuration) throws IOException {
    replay(configuration, inputs());
  }

  /** With the room of firmware for a show with times of so many bytes. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void playerOfShowsStaysInItsRoom(int timeBytes) throws IOException {
    String room =
        "LAMPWRIGHT_INPUTS=6 LAMPWRIGHT_CENTRES=4 LAMPWRIGHT_SITUATIONS=16 LAMPWRIGHT_SLOTS=60"
            + " LAMPWRIGHT_CONDITION_BYTES=4 LAMPWRIGHT_TIME_BYTES=";
    List<Path> shows = inputs();
    shows.removeIf(file -> !file.getFileName().toString().startsWith("show-" + timeBytes));
    replay(room + timeBytes, shows);
  }

  private void replay(String configuration, List<Path> inputs) throws IOException {
    OutsideTools.Tool gcc = OutsideTools.onThisMachine().find("gcc", "gcc");
    Path program = dir.resolve("replay");
    List<String> build = new ArrayList<>();
    build.addAll(List.of("-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-O1", "-g"));
    build.addAll(List.of("-fsanitize=address,undefined", "-fno-sanitize-recover=all"));
    for (String setting : Splitter.on(' ').split(configuration)) {
      build.add("-D" + setting);
    }
    build.addAll(List.of("-DLAMPWRIGHT_MAX_LAMPS=255", "-DLAMPWRIGHT_CEILING=1", "-Isrc/test/c"));
    build.addAll(List.of("-I" + SOURCES, "src/test/c/fuzz_player.c", "src/test/c/fuzz_replay.c"));
    for (String part : List.of("player", "situations", "ceiling")) {
      build.add(SOURCES + "lampwright_" + part + ".c");
    }
    build.addAll(List.of("-o", program.toString()));
    gcc.run(Path.of("").toAbsolutePath(), build.toArray(String[]::new)).quietOut();
    List<String> files = new ArrayList<>(List.of(String.valueOf(ROUNDS)));
    inputs.forEach(file -> files.add(file.toAbsolutePath().toString()));
    byte[] out = new OutsideTools.Tool(program).run(dir, files.toArray(String[]::new)).quietOut();
    assertThat(new String(out, US_ASCII)).isEqualTo(inputs.size() * (ROUNDS + 1) + " inputs\n");
  }

  @Test
  void decoderRefusesInOneWay() throws IOException {
    Random random = new Random(SEED);
    for (Path file : inputs()) {
      byte[] input = Files.readAllBytes(file);
      FuzzPlay.fuzzerTestOneInput(input);
      for (int round = 0; round < DECODER_ROUNDS; round++) {
        byte[] bad = damaged(input, random);
        try {
          FuzzPlay.fuzzerTestOneInput(bad);
        } catch (RuntimeException e) {
          throw new AssertionError(file.getFileName() + ": " + Arrays.toString(bad), e);
        }
      }
    }
  }

  /** Changes some bytes, or moves what comes after them. */
  private static byte[] damaged(byte[] input, Random random) {
    byte[] bytes = input.clone();
    for (int hits = 1 + random.nextInt(5); hits > 0; hits--) {
      int at = random.nextInt(bytes.length);
      if (random.nextInt(6) > 0) {
        bytes[at] = (byte) random.nextInt(256);
      } else if (random.nextBoolean()) {
        byte[] longer = Arrays.copyOf(bytes, bytes.length + 1);
        System.arraycopy(bytes, at, longer, at + 1, bytes.length - at);
        bytes = longer;
      } else {
        System.arraycopy(bytes, at + 1, bytes, at, bytes.length - at - 1);
        bytes = Arrays.copyOf(bytes, bytes.length - 1);
      }
    }
    return bytes;
  }

  private static List<Path> inputs() throws IOException {
    Path folder = Path.of("src/test/resources/lampwright/exporters/packed/play/fuzz");
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().collect(Collectors.toCollection(ArrayList::new));
    }
  }
}
