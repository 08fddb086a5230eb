package lampwright.exporters.packed.encode;

import lampwright.exporters.packed.play.PlayerCycles;

/** What the frames of a scene take on an AVR: the dearest of them. */
final class Load {
  private int worst;
  private int[] lamps = new int[0];

  /** Counts a frame, lamp by lamp. */
  void take(int[] cyclesOfLamps) {
    int cycles = PlayerCycles.FRAME;
    for (int own : cyclesOfLamps) {
      cycles += own;
    }
    if (cycles > worst) {
      worst = cycles;
      lamps = cyclesOfLamps;
    }
  }

  /** Cycles of the dearest frame. */
  int worst() {
    return worst;
  }

  /** What a lamp takes of them. */
  int ofLamp(int lamp) {
    return lamps[lamp];
  }
}
