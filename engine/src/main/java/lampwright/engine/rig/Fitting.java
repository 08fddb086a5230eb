package lampwright.engine.rig;

import java.util.List;

/** What a lamp is made of. */
public sealed interface Fitting {
  /** How many lights the lamp has: its pixels, or the one of an output. */
  int lights();

  /** Pixels, in the order in which patterns see them. */
  record Pixels(List<PixelRun> runs) implements Fitting {
    public Pixels {
      runs = List.copyOf(runs);
    }

    @Override
    public int lights() {
      return runs.stream().mapToInt(PixelRun::count).sum();
    }
  }

  /**
   * One driver output.
   *
   * @param output the output's id
   */
  record Output(String output) implements Fitting {
    @Override
    public int lights() {
      return 1;
    }
  }
}
