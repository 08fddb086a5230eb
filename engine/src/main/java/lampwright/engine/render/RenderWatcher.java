package lampwright.engine.render;

import lampwright.engine.time.Moment;

/** Hears the steps of a frame as the renderer takes them; it may look at nothing later. */
interface RenderWatcher {
  /** Hears nothing. */
  RenderWatcher NOBODY = new RenderWatcher() {};

  /**
   * A cue begins to paint.
   *
   * @param cue the lowest first
   * @param sinceStartMs time since its start
   * @param faded how far its fades have it, 0 to 1
   * @param a the light of that
   * @param light what is under it
   */
  default void begins(CuePlayer cue, Moment sinceStartMs, double faded, double a, Light light) {}

  /**
   * It has painted rows that its pattern sees alike, and lays them next.
   *
   * @param packages those of each row
   * @param row the drives of a row
   */
  default void paints(PackageRuns packages, double[] row) {}

  /** It is laid. */
  default void ends(Light light) {}

  /** All cues are laid. */
  default void mixed(Light light) {}

  /** Lamps with a warm-up have followed. */
  default void felt(Light light) {}

  /**
   * The frame is about to become bytes.
   *
   * @param frameFactor by which it is scaled to meet the supply's limit
   * @param quantiser has what was carried from the frame before
   */
  default void scales(double frameFactor, Quantiser quantiser) {}
}
