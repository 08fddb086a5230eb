package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class HexRecordsTest {
  /** Published: Intel hexadecimal object file format, 1988; the record that is quoted from it. */
  @Test
  void recordIsThePublishedOne() throws IOException {
    byte[] data = HexFormat.of().parseHex("214601360121470136007EFE09D21901");
    assertThat(records(0x0100, data))
        .isEqualTo(":10010000214601360121470136007EFE09D2190140\n:00000001FF\n");
  }

  @Test
  void recordsDoNotRestOnHowTheDataCame() throws IOException {
    byte[] all = new byte[100];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) (i * 37);
    }
    byte[][] single = new byte[all.length][1];
    for (int i = 0; i < all.length; i++) {
      single[i][0] = all[i];
    }
    assertThat(records(0xFFE5, single)).isEqualTo(records(0xFFE5, all));
  }

  private static String records(long address, byte[]... parts) throws IOException {
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    BlockOutput out = new BlockOutput(text);
    HexRecords records = new HexRecords(out, address);
    for (byte[] part : parts) {
      records.data(part);
    }
    records.end();
    out.flush();
    return text.toString(StandardCharsets.US_ASCII);
  }
}
