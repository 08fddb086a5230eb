package lampwright.exporters.proof.rp2040;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.OutsideTools.Tool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Registers, flags and memory after random instructions, against QEMU's ARMv6-M. */
class CoreJudgeTest {
  private static final OutsideTools TOOLS = OutsideTools.onThisMachine();
  private static final int PROGRAMS = 12;

  @TempDir Path folder;

  @Test
  void randomInstructionsDoWhatQemuDoes() throws IOException {
    Tool qemu = TOOLS.find("qemu-system-arm", "qemu-system-arm");
    for (int seed = 1; seed <= PROGRAMS; seed++) {
      RandomCode code = new RandomCode(seed);
      byte[] wanted = onQemu(qemu, code);
      byte[] found = onModel(code);
      int records = RandomCode.RECORDS - RandomCode.SCRATCH;
      int differs = Arrays.mismatch(tail(wanted, records), tail(found, records));
      assertEquals(-1, differs, "seed " + seed + ", record " + differs / 60);
      assertEquals(
          -1, Arrays.mismatch(Arrays.copyOf(wanted, 256), Arrays.copyOf(found, 256)), "scratch");
    }
  }

  private static byte[] tail(byte[] memory, int from) {
    return Arrays.copyOfRange(memory, from, memory.length);
  }

  private byte[] onQemu(Tool qemu, RandomCode code) throws IOException {
    byte[] vectors =
        ByteBuffer.allocate(8)
            .order(ByteOrder.LITTLE_ENDIAN)
            .putInt(RandomCode.RECORDS)
            .putInt(RandomCode.DRIVER | 1)
            .array();
    Files.write(folder.resolve("vectors.bin"), vectors);
    Files.write(folder.resolve("code.bin"), code.memory());
    Files.deleteIfExists(folder.resolve("ram"));
    qemu.run(
        folder,
        "-M",
        "microbit",
        "-display",
        "none",
        "-monitor",
        "none",
        "-serial",
        "none",
        "-semihosting-config",
        "enable=on,target=native",
        "-device",
        "loader,file=vectors.bin,addr=0,force-raw=on",
        "-device",
        "loader,file=code.bin,addr=0x20000000,force-raw=on");
    return Files.readAllBytes(folder.resolve("ram"));
  }

  private static byte[] onModel(RandomCode code) {
    Rp2040 chip =
        new Rp2040(TestImages.flash(new Thumb(0).b(0).bytes()), (pin, level, cycle) -> {});
    chip.bus().load(RandomCode.SCRATCH, code.memory());
    chip.cpu().start(RandomCode.DRIVER, RandomCode.RECORDS);
    for (int steps = 0; chip.cpu().next() != code.exit(); steps++) {
      if (steps == 100_000) {
        throw new AssertionError("does not come to its end");
      }
      chip.cpu().step();
    }
    byte[] memory = new byte[RandomCode.MEMORY_BYTES];
    for (int i = 0; i < memory.length; i++) {
      memory[i] = (byte) chip.bus().read8(RandomCode.SCRATCH + i);
    }
    return memory;
  }
}
