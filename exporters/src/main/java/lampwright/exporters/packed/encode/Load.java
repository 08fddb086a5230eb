package lampwright.exporters.packed.encode;

import lampwright.exporters.packed.play.DecodeCost;
import lampwright.exporters.packed.play.PlayerStep;

/** What the frames of a scene take on a controller: the costliest of them. */
final class Load {
  private final int ofEachFrame;
  private int worst;
  private int[] lamps = new int[0];

  Load(DecodeCost cost) {
    ofEachFrame = cost.cycles(PlayerStep.FRAME);
  }

  /** Counts a frame, lamp by lamp. */
  void take(int[] cyclesOfLamps) {
    int cycles = ofEachFrame;
    for (int own : cyclesOfLamps) {
      cycles += own;
    }
    if (cycles > worst) {
      worst = cycles;
      lamps = cyclesOfLamps;
    }
  }

  /** Cycles of the costliest frame. */
  int worst() {
    return worst;
  }

  /** What a lamp takes of them. */
  int ofLamp(int lamp) {
    return lamps[lamp];
  }
}
