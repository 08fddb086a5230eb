package lampwright.exporters.packed.format;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers of docs/packed.md. */
class FormatTest {
  /** The check value of CRC-32 (IEEE 802.3): of the digits 1 to 9 it is CBF43926. */
  @Test
  void checksumIsOfAllBehindIt() {
    byte[] data = "??????123456789".getBytes(US_ASCII);
    assertThat(Format.checksum(data)).isEqualTo(0xCBF43926);
    data[5] = 0;
    assertThat(Format.checksum(data)).isEqualTo(0xCBF43926);
    data[6] = 0;
    CRC32 crc = new CRC32();
    crc.update(data, 6, 9);
    assertThat(Format.checksum(data)).isEqualTo((int) crc.getValue());
  }

  /** 27 to 65,279 bytes, or to 16,776,959 with wide places; FF00 and FFFF00 are counts. */
  @Test
  void largestSizesLeaveRoomForCounts() {
    assertThat(Format.maxSize(2)).isEqualTo(65_279);
    assertThat(Format.maxSize(3)).isEqualTo(16_776_959);
    assertThat(Format.darkRow(2)).isEqualTo(0xFF00);
    assertThat(Format.darkRow(3)).isEqualTo(0xFFFF00);
  }

  /** Bit 3 of the kind: skip is a u16. */
  @ParameterizedTest
  @CsvSource({"2, 0, 2 0", "2, 255, 2 -1", "2, 256, 10 0 1", "17, 770, 25 2 3"})
  void skipIsWrittenInOneByteOrTwo(int kind, int skip, String bytes) {
    ByteSink out = new ByteSink();
    Format.writeKind(out, kind, skip);
    assertThat(words(out)).isEqualTo(bytes);
  }

  private static String words(ByteSink out) {
    StringBuilder words = new StringBuilder();
    for (byte b : out.toBytes()) {
      words.append(words.isEmpty() ? "" : " ").append(b);
    }
    return words.toString();
  }

  @Test
  void numbersAreLittleEndian() {
    ByteSink out = new ByteSink();
    out.u8(0x1FF).u16(0x20304).u24(0x5060708).number(0x0A0B0C0D, 4).number(7, 0);
    assertThat(out.toBytes()).containsExactly(0xFF, 4, 3, 8, 7, 6, 0x0D, 0x0C, 0x0B, 0x0A);
    assertThat(out.size()).isEqualTo(10);
    out.set(1, 0xFFEE, 2);
    out.set(9, 1, 1);
    assertThat(out.toBytes()).containsExactly(0xFF, 0xEE, 0xFF, 8, 7, 6, 0x0D, 0x0C, 0x0B, 1);
  }

  @Test
  void sinkGrowsAsItIsFilled() {
    byte[] bytes = new byte[1000];
    new Random(5).nextBytes(bytes);
    ByteSink out = new ByteSink().all(bytes).all(new byte[0]).u8(9);
    assertThat(out.size()).isEqualTo(1001);
    assertThat(out.toBytes()).startsWith(bytes).endsWith(9);
  }
}
