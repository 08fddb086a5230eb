package lampwright.exporters.packed.encode;

import java.util.List;

/**
 * One scene to pack.
 *
 * @param id the scene's id
 * @param frames frames, 1 to {@value #MAX_FRAMES}
 * @param loop whether the last frame is followed by the first, or stays
 * @param periodMicros time from frame to frame in microseconds, 1 to {@value #MAX_PERIOD_MICROS}
 * @param source gives the frames
 * @param borders where the light of each lamp of the layout changes; of those that are not in the
 *     list nothing is known
 */
public record PackScene(
    String id,
    int frames,
    boolean loop,
    int periodMicros,
    FrameSource source,
    List<CueBorders> borders) {

  /** Most frames of a scene. */
  public static final int MAX_FRAMES = 1_000_000;

  /** Longest frame period: ten seconds. */
  public static final int MAX_PERIOD_MICROS = 10_000_000;

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException if a value is out of range
   */
  public PackScene {
    Limits.check("frames", frames, 1, MAX_FRAMES);
    Limits.check("periodMicros", periodMicros, 1, MAX_PERIOD_MICROS);
    borders = List.copyOf(borders);
  }

  /** A scene of whose cues nothing is known. */
  public PackScene(String id, int frames, boolean loop, int periodMicros, FrameSource source) {
    this(id, frames, loop, periodMicros, source, List.of());
  }

  CueBorders bordersOf(int lamp) {
    return lamp < borders.size() ? borders.get(lamp) : CueBorders.NONE;
  }
}
