package lampwright.engine.meter;

/**
 * What a part of the model draws over a scene.
 *
 * @param id of the lamp, chain or output
 * @param peakMilliamps the most in any frame
 * @param peakFrame the first frame that draws so much
 * @param meanMilliamps over all frames
 */
public record CurrentDraw(String id, double peakMilliamps, int peakFrame, double meanMilliamps) {}
