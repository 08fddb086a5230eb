package lampwright.app.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import lampwright.exporters.live.Crc16;
import org.junit.jupiter.api.Test;

/** Packets and answers byte by byte, as docs/live.md draws them. */
class LinkCodecTest {
  private static final HexFormat HEX = HexFormat.of();

  private static List<Answer> read(byte[]... parts) {
    AnswerReader reader = new AnswerReader();
    List<Answer> found = new ArrayList<>();
    for (byte[] part : parts) {
      reader.take(part, part.length, found::add);
    }
    return found;
  }

  private static byte[] joined(byte[]... parts) {
    int length = Arrays.stream(parts).mapToInt(part -> part.length).sum();
    byte[] all = new byte[length];
    int at = 0;
    for (byte[] part : parts) {
      System.arraycopy(part, 0, all, at, part.length);
      at += part.length;
    }
    return all;
  }

  /** The check value of CRC-16/MCRF4XX in the RevEng catalogue (from memory): 0x6F91. */
  @Test
  void crcOfTheCatalogue() {
    byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
    assertThat(Crc16.of(digits, 0, 9)).isEqualTo(0x6F91);
    assertThat(SimulatedController.crc(digits)).isEqualTo(0x6F91);
  }

  @Test
  void questionHasLengthZero() {
    int crc = SimulatedController.crc(new byte[] {0, 0, 5});
    assertThat(HEX.formatHex(LinkPacket.question(5)))
        .isEqualTo("a7000005" + HEX.toHexDigits((byte) crc) + HEX.toHexDigits((byte) (crc >> 8)));
  }

  @Test
  void packetHasLowByteFirst() {
    byte[] packet = LinkPacket.frame(258, new byte[300]);
    assertThat(packet).hasSize(306);
    assertThat(HEX.formatHex(packet, 0, 4)).isEqualTo("a72c0102");
    assertThatThrownBy(() -> LinkPacket.frame(0, new byte[65_536]))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void answersAreRead() {
    byte[] here = SimulatedController.answer(1, 200, 1, 0, 0x34, 0x12, 0xCD, 0xAB);
    byte[] taken = SimulatedController.answer(2, 255);
    assertThat(read(joined(here, taken)))
        .containsExactly(
            new Answer.Here(200, 1, 0, new LinkIdentity(0x1234, 0xABCD)), new Answer.Taken(255));
  }

  @Test
  void answersAreReadByteByByteAndAmongNoise() {
    byte[] all =
        joined(
            new byte[] {0, 0x7A, 0x7A, 3, 0x7A, 2},
            SimulatedController.answer(2, 7),
            new byte[] {0x7A, 1, 0x7A},
            SimulatedController.answer(2, 8),
            SimulatedController.answer(2, 9),
            SimulatedController.answer(2, 0x7A));
    byte[][] single = new byte[all.length][];
    for (int i = 0; i < all.length; i++) {
      single[i] = new byte[] {all[i]};
    }
    List<Answer> expected =
        List.of(
            new Answer.Taken(7), new Answer.Taken(8), new Answer.Taken(9), new Answer.Taken(0x7A));
    assertThat(read(all)).isEqualTo(expected);
    assertThat(read(single)).isEqualTo(expected);
  }

  /** Whatever bit is hit, the answer after it is read, and nothing is made up. */
  @Test
  void damagedAnswerIsNoneAndHidesNoneAfterIt() {
    byte[] here = SimulatedController.answer(1, 3, 1, 0, 9, 0, 1, 2);
    for (int bit = 0; bit < here.length * 8; bit++) {
      byte[] hit = here.clone();
      hit[bit / 8] ^= (byte) (1 << bit % 8);
      // A long answer may take what follows for its own end: one more brings it to light.
      List<Answer> found =
          read(hit, SimulatedController.answer(2, 4), SimulatedController.answer(2, 5));
      assertThat(found).as("bit %d", bit).endsWith(new Answer.Taken(4), new Answer.Taken(5));
      assertThat(found).as("bit %d", bit).hasSize(2);
    }
  }

  @Test
  void noiseMakesNothingUpButByChance() {
    Random random = new Random(18);
    byte[] noise = new byte[100_000];
    random.nextBytes(noise);
    // A start, a kind and 16 bits must fit: 100,000 bytes have about 2 x 100,000 / 2^32 such
    // places.
    assertThat(read(noise)).isEmpty();
  }
}
