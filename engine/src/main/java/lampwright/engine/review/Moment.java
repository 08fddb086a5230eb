package lampwright.engine.review;

import java.util.Locale;
import java.util.OptionalInt;

/**
 * Where in time a finding belongs.
 *
 * @param scene id of the scene
 * @param frame in which it is found or begins, from 0; none if it belongs to no one frame
 * @param framesPerSecond of the scene, above 0
 */
public record Moment(String scene, OptionalInt frame, double framesPerSecond) {
  /** The time of the frame, s; 0 if it belongs to no one frame. */
  public double seconds() {
    return frame.orElse(0) / framesPerSecond;
  }

  /** As people read it: {@code scene working, 1.20 s}. */
  public String words() {
    String time = frame.isPresent() ? String.format(Locale.ROOT, ", %.2f s", seconds()) : "";
    return "scene " + scene + time;
  }
}
