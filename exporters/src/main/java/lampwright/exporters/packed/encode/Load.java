package lampwright.exporters.packed.encode;

import com.google.common.primitives.ImmutableIntArray;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import lampwright.exporters.packed.play.DecodeCost;
import lampwright.exporters.packed.play.PlayerStep;

/** Which frames of a scene take a controller too long. */
final class Load {
  private final int ofEachFrame;
  private final double budget;
  private final List<Late> late = new ArrayList<>();
  private int frames;

  /**
   * A frame that takes too long.
   *
   * @param cycles all that it takes
   * @param cyclesOfLamps what lamps take of it
   */
  record Late(int frame, int cycles, ImmutableIntArray cyclesOfLamps) {}

  /**
   * @param budget cycles that a frame may take; 0 if it may take any
   */
  Load(DecodeCost cost, double budget) {
    ofEachFrame = cost.cycles(PlayerStep.FRAME);
    this.budget = budget;
  }

  /** Counts the next frame, lamp by lamp. */
  void take(int[] cyclesOfLamps) {
    int cycles = ofEachFrame + Arrays.stream(cyclesOfLamps).sum();
    if (budget > 0 && cycles > budget) {
      late.add(new Late(frames, cycles, ImmutableIntArray.copyOf(cyclesOfLamps)));
    }
    frames++;
  }

  /** Frames that take more than their budget, the costliest first. */
  List<Late> late() {
    return late.stream().sorted(Comparator.comparingInt(frame -> -frame.cycles())).toList();
  }
}
