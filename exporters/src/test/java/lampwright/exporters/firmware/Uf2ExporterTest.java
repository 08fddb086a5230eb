package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import lampwright.engine.review.Finding;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.packed.encode.PackedExporter;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The bytes of UF2 files, read by offsets of the format and of docs/formats.md; what is refused.
 */
class Uf2ExporterTest {
  private static final int BLOCK = 512;

  private static ExportJob alone(FirmwareJobs jobs) {
    ProjectJob job = jobs.job();
    return ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT);
  }

  private static List<String> refusals(FirmwareJobs jobs) {
    return new Uf2Exporter().facts(alone(jobs)).refusals().stream().map(Finding::text).toList();
  }

  /** USB Flashing Format: words at 0, 4, 8, 12, 16, 20, 24, 28, 508; RP2040 0xE48BFF56. */
  @Test
  void fileIsBlocksOfTheFlashingFormat() throws Exception {
    byte[] file = Rp2040Judge.uf2(alone(FirmwareJobs.on("rp2040").chain("ws2812b", 3)));
    assertThat(file.length % BLOCK).isZero();
    int count = file.length / BLOCK;
    // Whole sectors of 4 KiB, so that the boot ROM erases none that is not written whole.
    assertThat(count % 16).isZero();
    for (int i = 0; i < count; i++) {
      ByteBuffer block =
          ByteBuffer.wrap(file, BLOCK * i, BLOCK).slice().order(ByteOrder.LITTLE_ENDIAN);
      assertThat(block.getInt(0)).isEqualTo(0x0A324655);
      assertThat(block.getInt(4)).isEqualTo(0x9E5D5157);
      assertThat(block.getInt(8)).isEqualTo(0x2000);
      assertThat(block.getInt(12)).isEqualTo(0x10000000 + 256 * i);
      assertThat(block.getInt(16)).isEqualTo(256);
      assertThat(block.getInt(20)).isEqualTo(i);
      assertThat(block.getInt(24)).isEqualTo(count);
      assertThat(block.getInt(28)).isEqualTo(0xE48BFF56);
      assertThat(block.getInt(508)).isEqualTo(0x0AB16F30);
      for (int at = 288; at < 508; at++) {
        assertThat(block.get(at)).isZero();
      }
    }
  }

  private static ByteBuffer flash(ExportJob job) throws Exception {
    byte[] file = Rp2040Judge.uf2(job);
    ByteBuffer flash = ByteBuffer.allocate(file.length / 2).order(ByteOrder.LITTLE_ENDIAN);
    for (int at = 0; at < file.length; at += BLOCK) {
      flash.put(file, at + 32, 256);
    }
    return flash;
  }

  @Test
  void tableSaysWhatIsFitted() throws Exception {
    ExportJob job =
        alone(
            FirmwareJobs.on("rp2040")
                .chain("sk6812-rgbw", 5, "GP7")
                .chain("ws2812b", 300, "GP28")
                .output("GP9")
                .rate("29.97"));
    ByteBuffer table = flash(job).slice(0x8000, 216).order(ByteOrder.LITTLE_ENDIAN);
    byte[] all = new byte[216];
    table.get(0, all);
    assertThat(new String(all, 0, 4, "US-ASCII")).isEqualTo("LWT1");
    CRC32 crc = new CRC32();
    crc.update(all, 8, 208);
    assertThat(table.getInt(4)).isEqualTo((int) crc.getValue());
    assertThat(table.getShort(8)).isEqualTo((short) 2);
    assertThat(table.getShort(10)).isZero();
    // 1,000,000,000 / 29,970 = 33,366 and 20,980 / 29,970.
    assertThat(table.getInt(16)).isEqualTo(33_366);
    assertThat(table.getShort(20)).isEqualTo((short) 20_980);
    assertThat(table.getShort(22)).isEqualTo((short) (29_970 - 20_980));
    assertThat(table.getInt(24)).isEqualTo(20 + 900 + 1);
    assertThat(Arrays.copyOfRange(all, 28, 36))
        .containsExactly(2, 1, 5, 0, (byte) 0xA0, 0x0F, (byte) 254, 0);
    assertThat(all[36]).isEqualTo((byte) 7);
    assertThat(table.getShort(42)).isEqualTo((short) 20);
    assertThat(all[48]).isEqualTo((byte) 28);
    assertThat(table.getShort(54)).isEqualTo((short) 900);
    // 7,200 bits of 1.24 us and a reset of 300 us.
    assertThat(table.getInt(56)).isBetween(7200 * 124 / 100 + 300, 7200 * 124 / 100 + 310);
    assertThat(all[132]).isEqualTo((byte) 9);
  }

  @Test
  void packedDataIsWhatThePackedExportWrites() throws Exception {
    ExportJob job = alone(FirmwareJobs.on("rp2040").chain("ws2812b", 8));
    java.io.ByteArrayOutputStream packed = new java.io.ByteArrayOutputStream();
    new PackedExporter(Target.slowestDecodeCost()).export(job, name -> packed, Progress.SILENT);
    ByteBuffer flash = flash(job);
    assertThat(flash.getInt(0x800C)).isEqualTo(packed.size());
    byte[] bytes = new byte[packed.size()];
    flash.get(0x8000 + 216, bytes);
    assertThat(bytes).isEqualTo(packed.toByteArray());
  }

  @ParameterizedTest
  @CsvSource({"atmega328p, ATmega328P", "other, other controller"})
  void projectForAnotherControllerIsRefused(String controller, String name) {
    FirmwareJobs jobs = FirmwareJobs.on(controller).chain("ws2812b", 3);
    assertThat(refusals(jobs))
        .containsExactly(
            "uf2 export: the project is for the "
                + name
                + "; such files are for boards with an RP2040: select the RP2040 as the controller, or"
                + " export firmware [uf2-controller]");
    assertThrows(ExportRefusedException.class, () -> Rp2040Judge.uf2(alone(jobs)));
  }

  /**
   * 661 x 24 bits of 1.24 us, 300 us of reset and 40 us are more than 20 ms; of 660 they are not.
   */
  @Test
  void chainThatIsTooLongForTheFrameIsRefusedWithWhatFits() {
    assertThat(refusals(FirmwareJobs.on("rp2040").chain("ws2812b", 660).chain("ws2812b", 660)))
        .isEmpty();
    assertThat(refusals(FirmwareJobs.on("rp2040").chain("ws2812b", 660).chain("ws2812b", 661)))
        .singleElement()
        .asString()
        .startsWith(
            "chain c1, scene noise: sending a frame takes 20.01 ms (100 % of the frame time)")
        .contains("cut the chain to 660 pixels");
  }

  @Test
  void nineChainsAreRefused() {
    FirmwareJobs nine = FirmwareJobs.on("rp2040");
    for (int i = 0; i < 9; i++) {
      nine.chain("ws2812b", 1);
    }
    assertThat(refusals(nine)).singleElement().asString().contains("[too-many-chains]");
  }

  @Test
  void outputsOnOnePwmChannelAreRefused() {
    assertThat(refusals(FirmwareJobs.on("rp2040").output("GP3").output("GP19")))
        .singleElement()
        .asString()
        .contains("is on pin GP19, which has the PWM channel of GP3", "[pwm-channel-shared]");
    assertThat(refusals(FirmwareJobs.on("rp2040").output("GP3").output("GP20"))).isEmpty();
  }

  @Test
  void seventeenOutputsAreRefused() {
    FirmwareJobs jobs = FirmwareJobs.on("rp2040");
    for (int i = 0; i < 17; i++) {
      jobs.output();
    }
    assertThat(refusals(jobs)).anyMatch(text -> text.contains("[too-many-pwm-outputs]"));
  }

  /** A custom clock cannot be asked for: the times of the lines hang on 125 MHz. */
  @Test
  void anotherClockIsRefused() {
    assertThat(refusals(FirmwareJobs.on("rp2040", 133).chain("ws2812b", 1)))
        .singleElement()
        .asString()
        .contains("clock is 133 MHz; its driver is made for 125 MHz");
  }

  /** Frames of more than 65,535 bytes: the player numbers bytes in 16 bits. */
  @Test
  void frameOfTooManyBytesIsRefused() {
    FirmwareJobs jobs = FirmwareJobs.on("rp2040").rate("5").frames(2);
    for (int i = 0; i < 5; i++) {
      jobs.chain("sk6812-rgbw", 4096);
    }
    assertThat(refusals(jobs)).anyMatch(text -> text.contains("must be at most 65535"));
  }
}
