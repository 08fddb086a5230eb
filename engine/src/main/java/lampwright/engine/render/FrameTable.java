package lampwright.engine.render;

import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/**
 * All frames of a scene, in order, rendered when they are asked for. Immutable and safe for use by
 * several threads; each {@link FrameCursor} belongs to one.
 */
public final class FrameTable {
  private final FrameLayout layout;
  private final Scene scene;

  private FrameTable(FrameLayout layout, Scene scene) {
    this.layout = layout;
    this.scene = scene;
  }

  /**
   * The frame table of a scene.
   *
   * @param scene whose tracks name lamps of the rig
   * @throws IllegalArgumentException if a track names a lamp that the rig has not
   */
  public static FrameTable of(Rig rig, Scene scene) {
    for (var track : scene.tracks()) {
      for (String lamp : track.lamps()) {
        if (rig.lamp(lamp).isEmpty()) {
          throw new IllegalArgumentException("lamp: " + lamp + ": needs a lamp of the rig");
        }
      }
    }
    return new FrameTable(new FrameLayout(rig), scene);
  }

  /** How the bytes of a frame stand. */
  public FrameLayout layout() {
    return layout;
  }

  public Scene scene() {
    return scene;
  }

  /** 1 to 1,000,000. */
  public int frameCount() {
    return scene.frameCount();
  }

  /** Frames x bytes a frame. */
  public long bytes() {
    return (long) frameCount() * layout.bytes();
  }

  /** Opens the table at its first frame. */
  public FrameCursor cursor() {
    return new FrameCursor(new SceneRenderer(layout, scene), frameCount());
  }

  /**
   * One frame alone.
   *
   * @throws IndexOutOfBoundsException if there is no such frame
   */
  public byte[] frame(int frame) {
    FrameCursor cursor = cursor();
    cursor.seek(frame);
    byte[] bytes = new byte[layout.bytes()];
    cursor.next(bytes);
    return bytes;
  }
}
