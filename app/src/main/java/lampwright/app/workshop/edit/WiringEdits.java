package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;

/**
 * The order of lamps along a chain. A lamp takes its pixels with it, and each keeps its place in
 * the lamp, so that the light stays as it is.
 */
public final class WiringEdits {
  /**
   * Neighbouring pixels of one lamp, or that no lamp has.
   *
   * @param from the first
   * @param end the one after the last
   */
  public record Piece(int from, int end) {
    boolean has(int pixel) {
      return from <= pixel && pixel < end;
    }

    public int length() {
      return end - from;
    }
  }

  private WiringEdits() {}

  /** The pieces of a chain in the order of its data. */
  public static List<Piece> pieces(Rig rig, Chain chain) {
    String[] owners = owners(rig, chain);
    List<Piece> pieces = new ArrayList<>();
    int from = 0;
    for (int pixel = 1; pixel <= owners.length; pixel++) {
      if (pixel == owners.length || !owners[pixel].equals(owners[from])) {
        pieces.add(new Piece(from, pixel));
        from = pixel;
      }
    }
    return pieces;
  }

  /** The piece that has a pixel. */
  public static Optional<Piece> piece(Rig rig, Chain chain, int pixel) {
    return pieces(rig, chain).stream().filter(piece -> piece.has(pixel)).findFirst();
  }

  /**
   * Moves the piece of a chain that has one pixel to where another pixel's piece is; those between
   * move up.
   *
   * @param to a pixel of the same chain
   */
  public static Project move(Project project, String chain, int pixel, int to) {
    Rig rig = project.rig();
    Optional<Chain> found = rig.chains().stream().filter(c -> c.id().equals(chain)).findFirst();
    if (found.isEmpty()) {
      return project;
    }
    List<Piece> pieces = new ArrayList<>(pieces(rig, found.get()));
    int taken = index(pieces, pixel);
    int there = index(pieces, to);
    if (taken < 0 || there < 0 || taken == there) {
      return project;
    }
    pieces.add(there, pieces.remove(taken));
    int[] now = new int[found.get().pixels()];
    int next = 0;
    for (Piece piece : pieces) {
      for (int old = piece.from(); old < piece.end(); old++) {
        now[old] = next++;
      }
    }
    List<Lamp> lamps = rig.lamps().stream().map(lamp -> moved(lamp, chain, now)).toList();
    return Project.RIG.with(project, Rig.LAMPS.with(rig, lamps));
  }

  private static int index(List<Piece> pieces, int pixel) {
    for (int k = 0; k < pieces.size(); k++) {
      if (pieces.get(k).has(pixel)) {
        return k;
      }
    }
    return -1;
  }

  private static String[] owners(Rig rig, Chain chain) {
    String[] owners = new String[chain.pixels()];
    // No id is empty.
    Arrays.fill(owners, "");
    for (Lamp lamp : rig.lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels pixels) {
        pixels.runs().stream()
            .filter(run -> run.chain().equals(chain.id()))
            .forEach(run -> Arrays.fill(owners, run.from(), run.end(), lamp.id()));
      }
    }
    return owners;
  }

  private static Lamp moved(Lamp lamp, String chain, int[] now) {
    if (!(lamp.fitting() instanceof Fitting.Pixels pixels)) {
      return lamp;
    }
    List<PixelRun> runs = new ArrayList<>();
    for (PixelRun run : pixels.runs()) {
      for (int pixel = run.from(); pixel < run.end(); pixel++) {
        add(runs, run.chain(), run.chain().equals(chain) ? now[pixel] : pixel);
      }
    }
    Fitting fitting = new Fitting.Pixels(runs);
    return fitting.equals(lamp.fitting()) ? lamp : Lamp.FITTING.with(lamp, fitting);
  }

  private static void add(List<PixelRun> runs, String chain, int pixel) {
    PixelRun last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
    if (last != null && last.chain().equals(chain) && last.end() == pixel) {
      runs.set(runs.size() - 1, new PixelRun(chain, last.from(), last.count() + 1));
    } else {
      runs.add(new PixelRun(chain, pixel, 1));
    }
  }
}
