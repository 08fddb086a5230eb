package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import lampwright.exporters.OutsideTools;

/** Plays situations on a simulated ATmega328P: avr_situations.c tells how. */
final class AvrSituations {
  private static final String SOURCES = "src/main/resources/lampwright/exporters/firmware/src";

  private final Path dir;
  private final Path simulator;

  AvrSituations(Path dir) throws IOException, InterruptedException {
    OutsideTools.onThisMachine().findSimulator();
    this.dir = dir;
    this.simulator = dir.resolve("avr_situations");
    String source = "src/test/c/avr_situations.c";
    List<String> build = new ArrayList<>(List.of("gcc", "-O2", "-Wall", "-Wextra", source));
    build.addAll(List.of("-o", simulator.toString(), "-lsimavr", "-lelf"));
    execute(dir, build, new byte[0]);
  }

  /** Firmware with so much room. */
  Path build(ShowRoom room, String... options) throws IOException, InterruptedException {
    Path elf = dir.resolve("situations" + room.timeBytes() + ".elf");
    List<String> build = new ArrayList<>(List.of("avr-gcc", "-std=c99", "-Os", "-Wall"));
    build.addAll(List.of("-Wextra", "-Wpedantic", "-Werror", "-Isrc/test/c", "-I" + SOURCES));
    build.addAll(List.of("-mmcu=atmega328p", "-DPACKED_BYTES=12000", "-DFRAME_BYTES=450"));
    build.addAll(List.of(options));
    build.add("-DLAMPWRIGHT_INPUTS=" + Math.max(1, room.inputs()));
    build.add("-DLAMPWRIGHT_CENTRES=" + Math.max(1, room.centres()));
    build.add("-DLAMPWRIGHT_SITUATIONS=" + room.situations());
    build.add("-DLAMPWRIGHT_SLOTS=" + Math.max(1, room.slots()));
    build.add("-DLAMPWRIGHT_CONDITION_BYTES=" + Math.max(1, room.conditionBytes()));
    build.add("-DLAMPWRIGHT_TIME_BYTES=" + room.timeBytes());
    build.add("-DLAMPWRIGHT_USES=" + room.uses());
    build.add("src/test/c/avr_situations_main.c");
    for (String name :
        new String[] {
          "player.c", "player_avr.S", "situations.c", "situations_avr.S", "ceiling.c"
        }) {
      build.add(SOURCES + "/lampwright_" + name);
    }
    build.addAll(List.of("-o", elf.toString()));
    execute(dir, build, new byte[0]);
    return elf;
  }

  /** Plays cases in the form of situations_check.c. */
  byte[] run(byte[] in, List<Path> firmware) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of(simulator.toString()));
    firmware.forEach(elf -> command.add(elf.toString()));
    return execute(dir, command, in);
  }

  /** What the last run counted. */
  String report() throws IOException {
    return Files.readString(dir.resolve("err"));
  }

  static byte[] execute(Path dir, List<String> command, byte[] in)
      throws IOException, InterruptedException {
    Path input = Files.write(dir.resolve("in"), in);
    Path output = dir.resolve("out");
    Path errors = dir.resolve("err");
    int code =
        new ProcessBuilder(command)
            .redirectInput(input.toFile())
            .redirectOutput(output.toFile())
            .redirectError(errors.toFile())
            .start()
            .waitFor();
    assertThat(code).as("%s%n%s", command, Files.readString(errors)).isZero();
    return Files.readAllBytes(output);
  }
}
