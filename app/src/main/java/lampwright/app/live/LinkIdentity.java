package lampwright.app.live;

import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Rig;
import lampwright.exporters.live.LiveLayout;

/**
 * By what host and controller know that they mean the same frame.
 *
 * @param frameBytes bytes of a frame
 * @param layout the number of its layout, 0 to 65,535
 */
public record LinkIdentity(int frameBytes, int layout) {
  /** That of a rig's firmware. */
  public static LinkIdentity of(Rig rig) {
    return new LinkIdentity(new FrameLayout(rig).bytes(), LiveLayout.of(rig));
  }
}
