package lampwright.app.workshop.model.live;

import java.util.Arrays;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;

/** Frames in which one pixel or byte of a chain is lit, dim, and all else is dark. */
final class TestLight {
  /** A pixel with all its emitters: one can look at it, and it draws little. */
  static final int PIXEL_DUTY = 16;

  /** A single emitter: its colour is seen in a lit room. */
  static final int BYTE_DUTY = 48;

  private TestLight() {}

  static byte[] pixel(Rig rig, Chain chain, int pixel) {
    byte[] frame = dark(rig);
    int size = chain.order().size();
    int from = offset(rig, chain) + pixel * size;
    Arrays.fill(frame, from, from + size, (byte) PIXEL_DUTY);
    return frame;
  }

  static byte[] ofByte(Rig rig, Chain chain, int index) {
    byte[] frame = dark(rig);
    frame[offset(rig, chain) + index] = (byte) BYTE_DUTY;
    return frame;
  }

  static byte[] dark(Rig rig) {
    return new byte[new FrameLayout(rig).bytes()];
  }

  private static int offset(Rig rig, Chain chain) {
    return new FrameLayout(rig).chainOffset(rig.chains().indexOf(chain));
  }
}
