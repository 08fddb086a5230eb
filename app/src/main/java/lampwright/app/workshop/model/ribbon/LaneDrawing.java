package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import lampwright.app.picture.DisplayList;
import lampwright.app.picture.Stroke;
import lampwright.app.workshop.edit.CueRef;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/** Draws the cues of a lane, with handles, fades and names. */
final class LaneDrawing {
  /** Adds small text, shortened to its room. */
  @FunctionalInterface
  interface SmallText {
    void add(DisplayList.Builder list, String text, double x, double y, double room, RibbonInk ink);
  }

  private final RibbonsModel model;
  private final Scene scene;
  private final DisplayList.Builder list;
  private final SmallText small;
  private final TimeAxis axis;

  LaneDrawing(RibbonsModel model, Scene scene, DisplayList.Builder list, SmallText small) {
    this.model = model;
    this.scene = scene;
    this.list = list;
    this.small = small;
    this.axis = model.axis();
  }

  void lane(RibbonLayout.Row row, int lane) {
    int track = row.lanes().get(lane);
    List<Cue> cues = scene.tracks().get(track).cues();
    List<Integer> order = new ArrayList<>();
    double to = axis.ms(list.width());
    for (int c = 0; c < cues.size(); c++) {
      Cue cue = cues.get(c);
      double start = cue.startMs().doubleValue();
      if (start < to && start + cue.lengthMs().doubleValue() > axis.leftMs()) {
        order.add(c);
      }
    }
    order.sort(Comparator.comparing(c -> cues.get(c).startMs()));
    Set<CueRef> chosen = model.bench().selection().cues();
    boolean shared = scene.tracks().get(track).lamps().size() > 1;
    double drawnTo = Double.NEGATIVE_INFINITY;
    for (int c : order) {
      Cue cue = cues.get(c);
      RibbonLayout.Handle handle = RibbonLayout.handle(row, lane, cue, axis);
      boolean on = chosen.contains(new CueRef(track, c));
      // Thousands of cues on a few pixels look like one.
      if (!on && handle.x() + handle.width() <= drawnTo + 0.5) {
        continue;
      }
      drawnTo = handle.x() + handle.width();
      cue(cue, handle, on, shared);
    }
  }

  private void cue(Cue cue, RibbonLayout.Handle handle, boolean on, boolean shared) {
    double y = handle.y() - model.top();
    double left = Math.max(handle.x(), -4);
    double right = Math.min(handle.x() + handle.width(), list.width() + 4);
    RibbonInk ink = on ? RibbonInk.CUE_CHOSEN_EDGE : RibbonInk.CUE_EDGE;
    list.fillRect(
        left, y, right - left, handle.height(), on ? RibbonInk.CUE_CHOSEN : RibbonInk.CUE);
    edge(ink, left, y, right, handle.height(), on ? 2 : 1);
    double inX = axis.x(cue.startMs().add(cue.fadeInMs()).doubleValue());
    double outX = axis.x(cue.endMs().subtract(cue.fadeOutMs()).doubleValue());
    double bottom = y + handle.height();
    if (cue.fadeInMs().signum() > 0) {
      list.line(handle.x(), bottom, inX, y, Stroke.thin(ink));
    }
    if (cue.fadeOutMs().signum() > 0) {
      list.line(outX, y, handle.x() + handle.width(), bottom, Stroke.thin(ink));
    }
    if (on && handle.width() >= 20) {
      list.fillRect(inX - 3, y, 6, 4, RibbonInk.CUE_CHOSEN_EDGE);
      list.fillRect(outX - 3, y, 6, 4, RibbonInk.CUE_CHOSEN_EDGE);
    }
    if (right - left > 30) {
      String text = (shared ? "⇅ " : "") + blend(cue.blend()) + model.kind(cue);
      double from = Math.max(left, 0);
      small.add(
          list, text, from + 5, y + handle.height() / 2, right - from - 8, RibbonInk.CUE_TEXT);
    }
  }

  // Filled, as strokes are slow in software.
  private void edge(
      RibbonInk ink, double left, double y, double right, double height, double line) {
    double x = Math.round(left);
    double wide = Math.max(line, Math.round(right) - x);
    list.fillRect(x, y, wide, line, ink);
    list.fillRect(x, y + height - line, wide, line, ink);
    list.fillRect(x, y, line, height, ink);
    list.fillRect(x + wide - line, y, line, height, ink);
  }

  private static String blend(Blend blend) {
    return switch (blend) {
      case COVER -> "";
      case ADD -> "+ ";
      case BRIGHTER -> "∨ ";
      case SCALE -> "× ";
    };
  }
}
