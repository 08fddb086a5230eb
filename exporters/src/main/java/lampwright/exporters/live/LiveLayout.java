package lampwright.exporters.live;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;

/**
 * The number by which host and controller know that they mean the same frame: {@link Crc16} of
 *
 * <pre>
 *   chains (1)
 *   for each chain  | bytes in the frame (2, low byte first) | bytes per pixel (1) | order, such as "GRB"
 *   outputs (1)
 * </pre>
 */
public final class LiveLayout {
  private LiveLayout() {}

  /** The number of a rig's layout, 0 to 65,535. */
  public static int of(Rig rig) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(rig.chains().size());
    for (Chain chain : rig.chains()) {
      bytes.write(chain.bytes());
      bytes.write(chain.bytes() >> Byte.SIZE);
      bytes.write(chain.order().size());
      bytes.writeBytes(chain.order().letters().getBytes(StandardCharsets.US_ASCII));
    }
    bytes.write(rig.outputs().size());
    byte[] all = bytes.toByteArray();
    return Crc16.of(all, 0, all.length);
  }
}
