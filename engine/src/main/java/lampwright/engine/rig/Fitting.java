package lampwright.engine.rig;

import java.util.List;

/** What a lamp is made of. */
public sealed interface Fitting {
  /** Pixels, in the order in which patterns see them. */
  record Pixels(List<PixelRun> runs) implements Fitting {
    public Pixels {
      runs = List.copyOf(runs);
    }
  }

  /**
   * One driver output.
   *
   * @param output the output's id
   */
  record Output(String output) implements Fitting {}
}
