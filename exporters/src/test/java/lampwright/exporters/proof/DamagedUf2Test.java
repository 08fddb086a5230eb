package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.zip.CRC32;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareJobs;
import lampwright.exporters.firmware.Rp2040Judge;
import lampwright.exporters.proof.rp2040.Flash;
import lampwright.exporters.proof.rp2040.PinListener;
import lampwright.exporters.proof.rp2040.Rp2040;
import lampwright.exporters.proof.rp2040.Rp2040Fault;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * UF2 files that are cut or changed, at any byte. What belongs to the blocks the reader refuses;
 * what they bring lies under one of four checksums, or is filling that nothing reads; and with
 * either wrong the model of the controller never lights anything. Offsets as docs/formats.md and
 * docs/packed.md have them.
 */
class DamagedUf2Test {
  private static final int BLOCK = 512;
  private static final int PAYLOAD_AT = 32;
  private static final int PAGE = 256;
  private static final int SECTOR = 4096;
  private static final int ADDRESS_AT = 12;

  private static final int BOOT_CRC_AT = 252;
  private static final int PROGRAM_WORDS_AT = 256;
  private static final int PROGRAM_CRC_AT = 260;
  private static final int PROGRAM_AT = 264;
  private static final int TABLE_AT = 0x8000;
  private static final int TABLE_BYTES = 216;
  private static final int PACKED_AT = TABLE_AT + TABLE_BYTES;

  /** GP0 has an output, GP1 a chain. */
  private static final int OUTPUT = 0;

  private static final int CHAIN = 1;
  private static final int CHAIN_BITS = 72;

  /** Between the high times of a 0 and a 1 of the WS2812B, cycles of 8 ns. */
  private static final int THRESHOLD_CYCLES = 600 / 8;

  /** Of the system clock; the first frame is out after less than a third of them. */
  private static final long CYCLES = 5_000_000;

  private static byte[] file;
  private static byte[] image;
  private static int programBytes;
  private static int packedBytes;

  @BeforeAll
  static void export() throws Exception {
    file = Rp2040Judge.uf2(job(2));
    image = image(file);
    ByteBuffer words = ByteBuffer.wrap(image).order(ByteOrder.LITTLE_ENDIAN);
    programBytes = 4 * words.getInt(PROGRAM_WORDS_AT);
    packedBytes = words.getInt(TABLE_AT + 12);
  }

  private static ExportJob job(int frames) {
    ProjectJob job =
        FirmwareJobs.on("rp2040").output("GP0").chain("ws2812b", 3, "GP1").frames(frames).job();
    return ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT);
  }

  private static byte[] image(byte[] uf2) {
    byte[] image = new byte[uf2.length / 2];
    for (int page = 0; page < image.length / PAGE; page++) {
      System.arraycopy(uf2, BLOCK * page + PAYLOAD_AT, image, PAGE * page, PAGE);
    }
    return image;
  }

  @Test
  void fileCutAnywhereIsRefused() {
    for (int length = 0; length < file.length; length++) {
      byte[] cut = Arrays.copyOf(file, length);
      assertThrows(Uf2Exception.class, () -> Uf2Reader.read(cut), "length " + length);
    }
  }

  /**
   * Every byte beside the payload, of the first block, of one amid the file, and of the last: the
   * address too, whatever place it names, taken, free or none.
   */
  @Test
  void changedBlockIsRefused() {
    for (int block : new int[] {0, 77, file.length / BLOCK - 1}) {
      for (int at = 0; at < BLOCK; at++) {
        boolean payload = at >= PAYLOAD_AT && at < PAYLOAD_AT + PAGE;
        if (!payload) {
          byte[] changed = file.clone();
          changed[BLOCK * block + at] ^= 0x01;
          assertThrows(Uf2Exception.class, () -> Uf2Reader.read(changed), block + ": " + at);
        }
      }
    }
  }

  /** A checksum of 32 bits finds every change within 32 bits of what it is of. */
  @Test
  void everyByteIsUnderAChecksumOrFilling() {
    ByteBuffer words = ByteBuffer.wrap(image).order(ByteOrder.LITTLE_ENDIAN);
    assertEquals(crc(PROGRAM_AT, programBytes), words.getInt(PROGRAM_CRC_AT));
    assertEquals(crc(TABLE_AT + 8, TABLE_BYTES - 8), words.getInt(TABLE_AT + 4));
    assertEquals(crc(PACKED_AT + 6, packedBytes - 6), words.getInt(PACKED_AT + 2));
    assertThat(PROGRAM_AT + programBytes).isLessThanOrEqualTo(TABLE_AT);
    filling().forEach(at -> assertEquals((byte) 0xFF, image[at], "byte " + at));
  }

  private static int crc(int from, int count) {
    CRC32 crc = new CRC32();
    crc.update(image, from, count);
    return (int) crc.getValue();
  }

  /** What is neither boot stage nor program, table nor packed data. */
  private static IntStream filling() {
    return IntStream.concat(
        IntStream.range(PROGRAM_AT + programBytes, TABLE_AT),
        IntStream.range(PACKED_AT + packedBytes, image.length));
  }

  @Test
  void nothingReadsTheFilling() throws Exception {
    byte[] changed = image.clone();
    Random noise = new Random(14);
    filling().forEach(at -> changed[at] = (byte) noise.nextInt());
    assertThat(changed).isNotEqualTo(image);
    assertEquals(run(image), run(changed));
    assertThat(run(image).lit()).isTrue();
  }

  @Test
  void changedBootStageIsNotStarted() {
    for (int at = 0; at < BOOT_CRC_AT + 4; at++) {
      byte[] changed = changed(at);
      Rp2040Fault fault = assertThrows(Rp2040Fault.class, () -> run(changed), "byte " + at);
      assertThat(fault).hasMessageContaining("checksum is wrong");
    }
  }

  @Test
  void changedProgramTouchesNoPin() {
    IntStream.concat(
            IntStream.range(PROGRAM_WORDS_AT, PROGRAM_AT),
            IntStream.iterate(PROGRAM_AT, at -> at < PROGRAM_AT + programBytes, at -> at + 97))
        .forEach(at -> assertEquals(Seen.NOTHING, run(changed(at)), "byte " + at));
  }

  @Test
  void changedTableTouchesNoPin() {
    IntStream.range(TABLE_AT, PACKED_AT)
        .forEach(at -> assertEquals(Seen.NOTHING, run(changed(at)), "byte " + at));
  }

  @Test
  void changedSceneIsDark() {
    Seen dark = new Seen(false, CHAIN_BITS);
    IntStream.range(PACKED_AT, PACKED_AT + packedBytes)
        .forEach(at -> assertEquals(dark, run(changed(at)), "byte " + at));
  }

  /**
   * Tables whose checksum is right and whose content no program could play: another version, too
   * many chains or outputs, pins that are not there, steps that no delay can be, frames and data
   * that do not fit. Offsets as docs/formats.md has them.
   */
  @ParameterizedTest
  @CsvSource({
    "8, 2, 1",
    "8, 2, 3",
    "12, 4, 16744301",
    "24, 4, 0",
    "24, 4, 9",
    "24, 4, 65536",
    "28, 1, 9",
    "28, 1, 2",
    "29, 1, 17",
    "29, 1, 2",
    "36, 1, 30",
    "36, 1, 255",
    "37, 1, 0",
    "37, 1, 17",
    "38, 1, 0",
    "39, 1, 17",
    "40, 1, 0",
    "42, 2, 10",
    "132, 1, 30",
    "148, 1, 33",
    "148, 1, 8", // channels beside a chain
    "148, 6, 128849018881", // an input on pin 30
    "148, 6, 3298534883329" // one of kind 3
  })
  void signedTableThatCannotBePlayedTouchesNoPin(int at, int bytes, long value) {
    assertEquals(Seen.NOTHING, run(signed(at, bytes, value)));
  }

  /** No such scene; data that is not all there. */
  @ParameterizedTest
  @CsvSource({"10, 2, 1", "12, 4, 0", "12, 4, 26"})
  void signedTableOfAnotherSceneIsDark(int at, int bytes, int value) {
    assertEquals(new Seen(false, CHAIN_BITS), run(signed(at, bytes, value)));
  }

  @Test
  void signedTableAsItWasIsPlayed() {
    assertThat(run(signed(10, 2, 0))).isEqualTo(run(image));
  }

  private static byte[] signed(int at, int bytes, long value) {
    byte[] changed = image.clone();
    for (int i = 0; i < bytes; i++) {
      changed[TABLE_AT + at + i] = (byte) (value >> (8 * i));
    }
    CRC32 crc = new CRC32();
    crc.update(changed, TABLE_AT + 8, TABLE_BYTES - 8);
    ByteBuffer.wrap(changed)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putInt(TABLE_AT + 4, (int) crc.getValue());
    return changed;
  }

  private static byte[] changed(int at) {
    byte[] changed = image.clone();
    changed[at] ^= (byte) (1 << at % 8);
    return changed;
  }

  /** To every place that one wrong bit names: the page's own would be erased. */
  @Test
  void pageInAnotherPlaceIsRefused() {
    for (int block : new int[] {0, 1, 9, TABLE_AT / PAGE}) {
      for (int bit = 0; bit < 32; bit++) {
        byte[] changed = file.clone();
        changed[BLOCK * block + ADDRESS_AT + bit / 8] ^= (byte) (1 << bit % 8);
        Uf2Exception refused =
            assertThrows(Uf2Exception.class, () -> Uf2Reader.read(changed), block + ": " + bit);
        assertEquals(block, refused.block());
      }
    }
  }

  /** The board's own boot ROM would take such a file; the checksums keep it dark. */
  @Test
  void pageThatWentElsewhereIsDark() {
    for (int page : new int[] {1, 9, TABLE_AT / PAGE}) {
      byte[] changed = image.clone();
      Arrays.fill(changed, PAGE * page, PAGE * (page + 1), (byte) 0xFF);
      assertThat(run(changed).lit()).isFalse();
    }
  }

  /**
   * The board is unplugged while a file is copied over an older one: what is in flash is the new
   * one's beginning, the rest of that sector erased, then the older one.
   */
  @Test
  void fileHalfWrittenOverAnotherIsNeverNoise() throws Exception {
    byte[] older = image(Rp2040Judge.uf2(job(1000)));
    byte[] newer = image(Rp2040Judge.uf2(job(1001)));
    assertThat(older.length).isEqualTo(newer.length).isGreaterThanOrEqualTo(TABLE_AT + 2 * SECTOR);
    for (int pages = TABLE_AT / PAGE; pages <= newer.length / PAGE; pages++) {
      byte[] mixed = older.clone();
      int written = pages * PAGE;
      int erased = (written + SECTOR - 1) / SECTOR * SECTOR;
      System.arraycopy(newer, 0, mixed, 0, written);
      Arrays.fill(mixed, written, erased, (byte) 0xFF);
      boolean whole = Arrays.equals(mixed, older) || Arrays.equals(mixed, newer);
      assertEquals(whole, run(mixed).lit(), pages + " pages");
    }
  }

  /**
   * What came out of the pins.
   *
   * @param lit whether an output was high, or a bit was a 1
   * @param bits sent to the chain, of the first frames
   */
  private record Seen(boolean lit, long bits) {
    static final Seen NOTHING = new Seen(false, 0);
  }

  private static Seen run(byte[] image) {
    Flash flash = new Flash();
    for (int at = 0; at < image.length; at += PAGE) {
      flash.write(at, Arrays.copyOfRange(image, at, at + PAGE));
    }
    return run(flash);
  }

  private static Seen run(Flash flash) {
    Pins pins = new Pins();
    new Rp2040(flash, pins).run(CYCLES, () -> false);
    assertThat(pins.strange).as("other pins").isFalse();
    return new Seen(pins.lit, pins.bits);
  }

  private static final class Pins implements PinListener {
    private boolean lit;
    private boolean strange;
    private long bits;
    private long rise = -1;

    @Override
    public void changed(int pin, Level level, long cycle) {
      boolean up = level == Level.HIGH;
      strange |= up && pin != OUTPUT && pin != CHAIN;
      lit |= up && pin == OUTPUT;
      if (pin != CHAIN || up == rise >= 0) {
        return;
      }
      lit |= !up && cycle - rise > THRESHOLD_CYCLES;
      bits += up ? 1 : 0;
      rise = up ? cycle : -1;
    }
  }
}
