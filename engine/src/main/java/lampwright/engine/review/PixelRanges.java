package lampwright.engine.review;

import com.google.common.primitives.ImmutableDoubleArray;
import java.util.ArrayList;
import java.util.List;

/** Pixels of a chain in words. */
final class PixelRanges {
  private static final int SHOWN = 4;

  private PixelRanges() {}

  /** The pixels whose value is below a limit: {@code pixel 3}, {@code pixels 0-60, 70}. */
  static String below(ImmutableDoubleArray values, double limit) {
    List<String> ranges = new ArrayList<>();
    int count = 0;
    for (int from = 0; from < values.length(); from++) {
      int end = from;
      while (end < values.length() && values.get(end) < limit) {
        end++;
      }
      if (end > from) {
        ranges.add(end - from == 1 ? Integer.toString(from) : from + "-" + (end - 1));
        count += end - from;
        from = end;
      }
    }
    String shown = String.join(", ", ranges.subList(0, Math.min(SHOWN, ranges.size())));
    return (count == 1 ? "pixel " : "pixels ") + shown + (ranges.size() > SHOWN ? ", ..." : "");
  }
}
