package lampwright.app.workshop.model;

import lampwright.exporters.picture.ScreenLight;

/** A frame that comes from no scene alone. Two are never equal, so that each is shown. */
public final class LiveFrame {
  private final ScreenLight screen;
  private final byte[] bytes;
  private final boolean dimmed;

  /**
   * @param screen how the bytes look on the screen
   * @param dimmed whether it is held below the light that makes a flash
   */
  public LiveFrame(ScreenLight screen, byte[] bytes, boolean dimmed) {
    this.screen = screen;
    this.bytes = bytes.clone();
    this.dimmed = dimmed;
  }

  public ScreenLight screen() {
    return screen;
  }

  public byte[] bytes() {
    return bytes.clone();
  }

  public boolean dimmed() {
    return dimmed;
  }
}
