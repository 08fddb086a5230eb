package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lampwright.app.workshop.edit.CueRef;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/**
 * Where rows, lanes and cues stand, from the top of the first row. A row has the lamp's strip of
 * light, a lane for each track that drives it, and below them its duty curves if they are unfolded.
 */
public final class RibbonLayout {
  /**
   * One lamp's row.
   *
   * @param index of the lamp in the rig
   * @param y of its top
   * @param lanes indices of the tracks that drive it, from the topmost lane
   * @param curves height of its duty curves, 0 if they are folded
   */
  public record Row(
      int index,
      Lamp lamp,
      double y,
      double stripHeight,
      double laneHeight,
      List<Integer> lanes,
      double curves) {
    public Row {
      lanes = List.copyOf(lanes);
    }

    public double lanesY() {
      return y + stripHeight;
    }

    public double curvesY() {
      return lanesY() + Math.max(1, lanes.size()) * laneHeight;
    }

    public double height() {
      return curvesY() + curves + GAP - y;
    }
  }

  /** The part of a cue that a hand can hold. */
  public enum Grip {
    BODY,
    START,
    END,
    FADE_IN,
    FADE_OUT
  }

  /**
   * What is under the pointer.
   *
   * @param cue the cue, if there is one
   * @param grip its part
   */
  public record Hit(Row row, Optional<CueRef> cue, Grip grip) {}

  /** A cue's handle in one row, in pixels. */
  public record Handle(double x, double y, double width, double height) {}

  static final double GAP = 6;
  private static final double EDGE = 5;

  private final Scene scene;
  private final List<Row> rows = new ArrayList<>();
  private final double height;

  /**
   * @param lamps in the order of the rows
   * @param rig the lamps in rig order
   * @param unfolded ids of lamps whose curves are shown
   * @param em height of a line of text in pixels
   */
  public RibbonLayout(
      Scene scene, List<Lamp> lamps, List<Lamp> rig, Set<String> unfolded, double em) {
    this.scene = scene;
    Map<String, Integer> indices = new HashMap<>();
    for (int i = 0; i < rig.size(); i++) {
      indices.put(rig.get(i).id(), i);
    }
    Map<String, List<Integer>> lanes = new HashMap<>();
    for (int t = 0; t < scene.tracks().size(); t++) {
      for (String lamp : scene.tracks().get(t).lamps()) {
        lanes.computeIfAbsent(lamp, l -> new ArrayList<>()).add(t);
      }
    }
    double y = 0;
    for (Lamp lamp : lamps) {
      Row row =
          new Row(
              indices.getOrDefault(lamp.id(), 0),
              lamp,
              y,
              stripHeight(lamp, em),
              Math.rint(em * 1.25),
              lanes.getOrDefault(lamp.id(), List.of()),
              unfolded.contains(lamp.id()) ? Math.rint(em * 4) : 0);
      rows.add(row);
      y += row.height();
    }
    height = y;
  }

  // Of one pixel as high as its name; of more so high that each can be told from the next.
  private static double stripHeight(Lamp lamp, double em) {
    return Math.max(Math.rint(em * 1.35), 3 * Strip.stripes(lamp.fitting().lights()) + 4);
  }

  public List<Row> rows() {
    return rows;
  }

  public double height() {
    return height;
  }

  /** The row of a lamp. */
  public Optional<Row> row(String lamp) {
    return rows.stream().filter(row -> row.lamp().id().equals(lamp)).findFirst();
  }

  /** The rows that show between these heights. */
  public List<Row> between(double top, double bottom) {
    return rows.stream().filter(r -> r.y() < bottom && r.y() + r.height() > top).toList();
  }

  /** Where a cue's handle stands in a row; none if the row's lamp is not driven by it. */
  public Optional<Handle> handle(Row row, CueRef ref, TimeAxis axis) {
    int lane = row.lanes().indexOf(ref.track());
    return lane < 0 ? Optional.empty() : ref.in(scene).map(cue -> handle(row, lane, cue, axis));
  }

  /** Where a cue's handle stands. */
  public static Handle handle(Row row, int lane, Cue cue, TimeAxis axis) {
    double x = axis.x(cue.startMs().doubleValue());
    double width = Math.max(3, axis.x(cue.endMs().doubleValue()) - x);
    return new Handle(x, row.lanesY() + lane * row.laneHeight() + 1, width, row.laneHeight() - 2);
  }

  /**
   * What is at a point; of cues that lie over each other the one that starts last, as it is drawn
   * on top.
   */
  public Optional<Hit> hit(double x, double y, TimeAxis axis) {
    return rows.stream()
        .filter(row -> y >= row.y() && y < row.y() + row.height())
        .findFirst()
        .map(row -> hit(row, x, y, axis));
  }

  /** The cues whose handles a rectangle touches. */
  public List<CueRef> touched(double left, double top, double right, double bottom, TimeAxis axis) {
    List<CueRef> found = new ArrayList<>();
    for (Row row : between(top, bottom)) {
      for (int lane = 0; lane < row.lanes().size(); lane++) {
        int track = row.lanes().get(lane);
        List<Cue> cues = scene.tracks().get(track).cues();
        for (int c = 0; c < cues.size(); c++) {
          Handle handle = handle(row, lane, cues.get(c), axis);
          if (handle.x() < right
              && handle.x() + handle.width() > left
              && handle.y() < bottom
              && handle.y() + handle.height() > top) {
            found.add(new CueRef(track, c));
          }
        }
      }
    }
    return found;
  }

  private Hit hit(Row row, double x, double y, TimeAxis axis) {
    int lane = (int) Math.floor((y - row.lanesY()) / row.laneHeight());
    if (lane < 0 || lane >= row.lanes().size()) {
      return new Hit(row, Optional.empty(), Grip.BODY);
    }
    int track = row.lanes().get(lane);
    List<Cue> cues = scene.tracks().get(track).cues();
    int found = -1;
    for (int c = 0; c < cues.size(); c++) {
      Handle handle = handle(row, lane, cues.get(c), axis);
      boolean under = x >= handle.x() - 1 && x <= handle.x() + handle.width() + 1;
      if (under && (found < 0 || cues.get(c).startMs().compareTo(cues.get(found).startMs()) >= 0)) {
        found = c;
      }
    }
    if (found < 0) {
      return new Hit(row, Optional.empty(), Grip.BODY);
    }
    Cue cue = cues.get(found);
    return new Hit(
        row,
        Optional.of(new CueRef(track, found)),
        grip(cue, handle(row, lane, cue, axis), x, y, axis));
  }

  // The upper corners hold the fades, the sides the ends; a small cue is all body.
  private static Grip grip(Cue cue, Handle handle, double x, double y, TimeAxis axis) {
    if (handle.width() < 4 * EDGE) {
      return Grip.BODY;
    }
    boolean upper = y < handle.y() + handle.height() / 2;
    double inX = axis.x(cue.startMs().add(cue.fadeInMs()).doubleValue());
    double outX = axis.x(cue.endMs().subtract(cue.fadeOutMs()).doubleValue());
    if (upper && Math.abs(x - inX) <= EDGE) {
      return Grip.FADE_IN;
    }
    if (upper && Math.abs(x - outX) <= EDGE) {
      return Grip.FADE_OUT;
    }
    if (x <= handle.x() + EDGE) {
      return Grip.START;
    }
    return x >= handle.x() + handle.width() - EDGE ? Grip.END : Grip.BODY;
  }
}
