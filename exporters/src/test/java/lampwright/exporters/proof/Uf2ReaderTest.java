package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import lampwright.exporters.proof.rp2040.Flash;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The form: USB Flashing Format (UF2), written down here a second time. */
class Uf2ReaderTest {
  private static byte[] file() {
    ByteBuffer file = ByteBuffer.allocate(3 * 512).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < 3; i++) {
      file.position(512 * i);
      file.putInt(0x0A324655).putInt(0x9E5D5157).putInt(0x2000).putInt(0x10000000 + 256 * i);
      file.putInt(256).putInt(i).putInt(3).putInt(0xE48BFF56);
      file.putInt(512 * i + 508, 0x0AB16F30);
    }
    return file.array();
  }

  @Test
  void fileIsRead() throws Uf2Exception {
    Flash flash = Uf2Reader.read(file());
    // Three pages are written, and the one after them is not.
    for (int block = 0; block < 3; block++) {
      int offset = 256 * block;
      assertThrows(IllegalArgumentException.class, () -> flash.write(offset, new byte[256]));
    }
    flash.write(768, new byte[256]);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1, magic",
    "4, 1, second magic",
    "8, 0, flags",
    "8, 8193, flags",
    "12, 0x20000000, address",
    "12, 0x10000180, address",
    "12, 0x10000000, address",
    "12, 0x10000300, address",
    "12, 0x11000000, address",
    "16, 255, payload",
    "20, 2, number",
    "24, 4, number of blocks",
    "28, 0xE48BFF57, family",
    "288, 1, byte 288",
    "300, 1, byte 300",
    "504, 0x01000000, byte 507",
    "508, 0, last magic",
  })
  void wrongWordOfTheSecondBlockIsRefused(int at, String value, String reason) {
    byte[] file = file();
    ByteBuffer.wrap(file)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putInt(512 + at, (int) (long) Long.decode(value));
    Uf2Exception refused = assertThrows(Uf2Exception.class, () -> Uf2Reader.read(file));
    assertEquals(1, refused.block());
    assertThat(refused.reason()).contains(reason);
  }

  @Test
  void fileOfMoreThanTheFlashIsRefused() {
    int most = 16 << 20 >> 8;
    ByteBuffer file = ByteBuffer.allocate((most + 1) * 512);
    Uf2Exception refused = assertThrows(Uf2Exception.class, () -> Uf2Reader.read(file.array()));
    assertEquals(most, refused.block());
    assertThat(refused.reason()).contains("16777216 bytes of flash");
  }

  @Test
  void cutFileIsRefused() {
    for (int length = 0; length < 1536; length += 37) {
      byte[] cut = Arrays.copyOf(file(), length);
      assertThrows(Uf2Exception.class, () -> Uf2Reader.read(cut), "length " + length);
    }
    assertThrows(Uf2Exception.class, () -> Uf2Reader.read(Arrays.copyOf(file(), 1024)));
  }
}
