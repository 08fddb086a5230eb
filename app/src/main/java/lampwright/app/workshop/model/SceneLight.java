package lampwright.app.workshop.model;

import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameStore;
import lampwright.engine.render.FrameTable;
import lampwright.exporters.picture.ScreenLight;

/**
 * The light of one scene.
 *
 * @param frames its bytes, which come in while they are looked at
 * @param screen how they look on the screen
 */
public record SceneLight(FrameStore frames, ScreenLight screen) {
  /** The light of frames. */
  public static SceneLight of(FrameStore frames) {
    return new SceneLight(frames, ScreenLight.of(frames.table().layout()));
  }

  /** The light of a scene of which nothing is rendered yet. */
  public static SceneLight of(FrameTable table) {
    return of(new FrameStore(table));
  }

  /** Measures it, from the frames that are kept if all are. */
  SceneReport measure() {
    return SceneReport.of(frames.table(), gauge -> frames.forEach(gauge::frame));
  }
}
