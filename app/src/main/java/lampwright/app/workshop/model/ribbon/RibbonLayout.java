package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.app.workshop.edit.CueRef;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/**
 * Where headings, rows, lanes and cues stand, from the top of the first row. A row has a lane for
 * each track that drives the lamp, under them its strip of light, and below it its duty curves if
 * they are unfolded. Lamps of a group follow one another under a heading; of a folded group there
 * is the heading alone.
 */
public final class RibbonLayout {
  /**
   * One lamp's row.
   *
   * @param index of the lamp in the rig
   * @param number of the lamp among all rows, from 1
   * @param y of its top
   * @param lanes indices of the tracks that drive it, from the topmost lane
   * @param curves height of its duty curves, 0 if they are folded
   */
  public record Row(
      int index,
      int number,
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
      return y;
    }

    public double stripY() {
      return y + Math.max(1, lanes.size()) * laneHeight;
    }

    public double centreY() {
      return stripY() + stripHeight / 2;
    }

    public double curvesY() {
      return stripY() + stripHeight;
    }

    /** What the row's strip shows. */
    public List<Integer> lights() {
      return List.of(index);
    }

    public double height() {
      return curvesY() + curves + GAP - y;
    }
  }

  /**
   * The heading of a group.
   *
   * @param lamps of the group, in the order of their rows
   * @param lights their indices in the rig
   */
  public record Heading(
      String group,
      List<Lamp> lamps,
      List<Integer> lights,
      double y,
      double height,
      boolean folded) {
    public Heading {
      lamps = List.copyOf(lamps);
      lights = List.copyOf(lights);
    }

    public double centreY() {
      return y + height / 2;
    }
  }

  /** The part of a cue that a hand can hold. */
  public enum Grip {
    BODY,
    START,
    END,
    FADE_IN,
    FADE_OUT,
    KEYFRAME
  }

  /**
   * What is under the pointer.
   *
   * @param cue the cue, if there is one
   * @param grip its part
   * @param strip whether the point is on the strip of light
   * @param keyframe index of the one that is held; -1 if none is
   */
  public record Hit(Row row, Optional<CueRef> cue, Grip grip, boolean strip, int keyframe) {
    static Hit nothing(Row row, boolean strip) {
      return new Hit(row, Optional.empty(), Grip.BODY, strip, -1);
    }
  }

  /** A cue's handle in one row, in pixels. */
  public record Handle(double x, double y, double width, double height) {}

  static final double GAP = 6;
  private static final double EDGE = 5;

  private final Scene scene;
  private final List<Row> rows = new ArrayList<>();
  private final List<Heading> headings = new ArrayList<>();
  private final double height;

  /**
   * @param lamps in the order of the rows
   * @param rig the lamps in rig order
   * @param em height of a line of text in pixels
   */
  public RibbonLayout(Scene scene, List<Lamp> lamps, List<Lamp> rig, RowsLook look, double em) {
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
    // Those of no group come first: under a heading they would seem to be of its group.
    Map<String, List<Lamp>> groups = new LinkedHashMap<>();
    groups.put("", new ArrayList<>());
    lamps.forEach(lamp -> groups.computeIfAbsent(lamp.group(), g -> new ArrayList<>()).add(lamp));
    double y = 0;
    int number = 0;
    double laneHeight = Math.rint(em * 1.1);
    for (Map.Entry<String, List<Lamp>> group : groups.entrySet()) {
      boolean folded = look.folded().contains(group.getKey()) && !group.getKey().isEmpty();
      if (!group.getKey().isEmpty()) {
        List<Integer> lights =
            group.getValue().stream().map(lamp -> indices.getOrDefault(lamp.id(), 0)).toList();
        double high = Math.rint(em * 1.2);
        headings.add(new Heading(group.getKey(), group.getValue(), lights, y, high, folded));
        y += high + GAP / 2;
      }
      for (Lamp lamp : group.getValue()) {
        number++;
        if (!folded) {
          Row row =
              new Row(
                  indices.getOrDefault(lamp.id(), 0),
                  number,
                  lamp,
                  y,
                  look.height().ribbon(Strip.stripes(lamp.fitting().lights()), em),
                  laneHeight,
                  lanes.getOrDefault(lamp.id(), List.of()),
                  look.unfolded().contains(lamp.id()) ? Math.rint(em * 4) : 0);
          rows.add(row);
          y += row.height();
        }
      }
    }
    height = y;
  }

  /** The headings of groups, from the top. */
  public List<Heading> headings() {
    return headings;
  }

  /** The heading at a height. */
  public Optional<Heading> heading(double y) {
    return headings.stream().filter(h -> y >= h.y() && y < h.y() + h.height()).findFirst();
  }

  /** The heading of a lamp whose group is folded. */
  public Optional<Heading> folded(String lamp) {
    return headings.stream()
        .filter(h -> h.folded() && h.lamps().stream().anyMatch(l -> l.id().equals(lamp)))
        .findFirst();
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
    boolean strip = y >= row.stripY() && y < row.curvesY();
    int lane = (int) Math.floor((y - row.lanesY()) / row.laneHeight());
    if (strip && !row.lanes().isEmpty()) {
      // The strip shows what the lane right above it does, or what is laid over that.
      Hit onLane = hit(row, row.lanes().size() - 1, x, y, axis, true);
      for (int other = row.lanes().size() - 2; onLane.cue().isEmpty() && other >= 0; other--) {
        onLane = hit(row, other, x, y, axis, true);
      }
      return onLane;
    }
    if (strip || lane < 0 || lane >= row.lanes().size()) {
      return Hit.nothing(row, strip);
    }
    return hit(row, lane, x, y, axis, false);
  }

  private Hit hit(Row row, int lane, double x, double y, TimeAxis axis, boolean strip) {
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
      return Hit.nothing(row, strip);
    }
    Cue cue = cues.get(found);
    Handle handle = handle(row, lane, cue, axis);
    Optional<CueRef> ref = Optional.of(new CueRef(track, found));
    if (!strip) {
      return new Hit(row, ref, grip(cue, handle, x, y, axis), false, -1);
    }
    // Fades are held at the upper edge of the light, keyframes at the lower.
    if (y < row.centreY()) {
      return new Hit(row, ref, fade(cue, handle, x, axis), true, -1);
    }
    int keyframe = keyframe(cue, x, axis);
    return new Hit(row, ref, keyframe < 0 ? Grip.BODY : Grip.KEYFRAME, true, keyframe);
  }

  private static int keyframe(Cue cue, double x, TimeAxis axis) {
    if (cue.pattern() instanceof Keyframes keyframes) {
      for (int i = keyframes.frames().size() - 1; i >= 0; i--) {
        double at = axis.x(cue.startMs().add(keyframes.frames().get(i).atMs()).doubleValue());
        if (Math.abs(x - at) <= EDGE) {
          return i;
        }
      }
    }
    return -1;
  }

  // The upper half holds the fades, the ends the ends; a small cue is all body.
  private static Grip grip(Cue cue, Handle handle, double x, double y, TimeAxis axis) {
    if (handle.width() < 4 * EDGE) {
      return Grip.BODY;
    }
    Grip fade = fade(cue, handle, x, axis);
    if (fade != Grip.BODY && y < handle.y() + handle.height() / 2) {
      return fade;
    }
    if (x <= handle.x() + EDGE) {
      return Grip.START;
    }
    return x >= handle.x() + handle.width() - EDGE ? Grip.END : Grip.BODY;
  }

  private static Grip fade(Cue cue, Handle handle, double x, TimeAxis axis) {
    if (handle.width() < 4 * EDGE) {
      return Grip.BODY;
    }
    double inX = axis.x(cue.startMs().add(cue.fadeInMs()).doubleValue());
    double outX = axis.x(cue.endMs().subtract(cue.fadeOutMs()).doubleValue());
    if (Math.abs(x - inX) <= EDGE) {
      return Grip.FADE_IN;
    }
    return Math.abs(x - outX) <= EDGE ? Grip.FADE_OUT : Grip.BODY;
  }
}
