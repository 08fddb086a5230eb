package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.app.workshop.edit.CueRef;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.words.CueWords;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.picture.TypeMeasure;

/** Draws the cues of a lane as dimension lines: ticks at the ends, and what it does in the line. */
final class LaneDrawing {
  private static final double NAME_AT = 14;
  private static final double TICK = 4;

  private final CueWords words = new CueWords();
  private final RibbonsModel model;
  private final Scene scene;
  private final DisplayList.Builder list;
  private final TypeMeasure measure;
  private final double size;
  private final TimeAxis axis;

  LaneDrawing(
      RibbonsModel model, Scene scene, DisplayList.Builder list, TypeMeasure measure, double size) {
    this.model = model;
    this.scene = scene;
    this.list = list;
    this.measure = measure;
    this.size = size;
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
    int lamps = scene.tracks().get(track).lamps().size();
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
      line(cue, handle, on, lamps);
      onStrip(cue, row, handle, on);
    }
  }

  private void line(Cue cue, RibbonLayout.Handle handle, boolean on, int lamps) {
    double middle = Math.floor(handle.y() - model.top() + handle.height() / 2);
    double left = Math.max(handle.x(), -TICK);
    double right = Math.min(handle.x() + handle.width(), list.width() + TICK);
    RibbonInk ink = on ? RibbonInk.CUE_CHOSEN_EDGE : RibbonInk.CUE_EDGE;
    double weight = on ? 2 : 1;
    double from = Math.max(left, 0) + NAME_AT;
    double room = right - from - NAME_AT;
    double small = size * 0.92;
    if (room > 2 * size) {
      String text = new ShortNames(measure, small, room).middle(words.of(cue, lamps));
      double textEnd = from + measure.width(text, small) + 4;
      list.fillRect(left, middle, from - 4 - left, weight, ink);
      list.text(from, middle + 0.5, text, small, Mark.Height.CENTRE, RibbonInk.CUE_TEXT);
      list.fillRect(textEnd, middle, Math.max(0, right - textEnd), weight, ink);
    } else {
      list.fillRect(left, middle, right - left, weight, ink);
    }
    end(handle.x(), middle, ink, on);
    end(handle.x() + handle.width(), middle, ink, on);
  }

  // Filled, as strokes are slow in software; a slash through the tick as on drawings of builders.
  private void end(double x, double middle, RibbonInk ink, boolean on) {
    if (x < -TICK || x > list.width() + TICK) {
      return;
    }
    double at = Math.round(x);
    list.fillRect(at, middle - TICK, 1, 2 * TICK + 1, ink);
    if (on) {
      list.fillRect(at - 3, middle - 3, 7, 7, ink);
      list.fillRect(at - 1, middle - 1, 3, 3, RibbonInk.PAPER);
    } else {
      list.line(at - 2.5, middle + 3, at + 3.5, middle - 3, Stroke.thin(ink));
    }
  }

  // Fades and keyframes are drawn on the light that they make.
  private void onStrip(Cue cue, RibbonLayout.Row row, RibbonLayout.Handle handle, boolean on) {
    double top = row.stripY() - model.top();
    double bottom = top + row.stripHeight();
    double left = handle.x();
    double right = left + handle.width();
    RibbonInk ink = on ? RibbonInk.ON_FILM_CHOSEN : RibbonInk.ON_FILM;
    double inX = axis.x(cue.startMs().add(cue.fadeInMs()).doubleValue());
    double outX = axis.x(cue.endMs().subtract(cue.fadeOutMs()).doubleValue());
    if (cue.fadeInMs().signum() > 0) {
      list.line(left, bottom - 1, inX, top + 1, Stroke.thin(ink));
    }
    if (cue.fadeOutMs().signum() > 0) {
      list.line(outX, top + 1, right, bottom - 1, Stroke.thin(ink));
    }
    if (!on) {
      return;
    }
    double x = Math.max(left, -2);
    double wide = Math.min(right, list.width() + 2) - x;
    list.fillRect(x, top, wide, 1.5, ink);
    list.fillRect(x, bottom - 1.5, wide, 1.5, ink);
    list.fillRect(x, top, 1.5, bottom - top, ink);
    list.fillRect(x + wide - 1.5, top, 1.5, bottom - top, ink);
    if (handle.width() >= 20) {
      diamond(inX, top + 1, ink);
      diamond(outX, top + 1, ink);
      if (cue.pattern() instanceof Keyframes keyframes) {
        keyframes(cue, keyframes, bottom - 1);
      }
    }
  }

  // The selected one has a core of paper, as the ends of a selected cue have.
  private void keyframes(Cue cue, Keyframes pattern, double y) {
    boolean single = model.bench().cue().filter(cue::equals).isPresent();
    int selected = single ? model.keyframes().selectedProperty().get().orElse(-1) : -1;
    double left = axis.x(cue.startMs().doubleValue());
    double right = axis.x(cue.endMs().doubleValue());
    for (int i = 0; i < pattern.frames().size(); i++) {
      double at = axis.x(cue.startMs().add(pattern.frames().get(i).atMs()).doubleValue());
      if (at >= left && at <= right) {
        diamond(at, y, RibbonInk.ON_FILM_CHOSEN);
        if (i == selected) {
          list.fillRect(at - 2, y - 2, 4, 4, RibbonInk.PAPER);
        }
      }
    }
  }

  private void diamond(double x, double y, RibbonInk ink) {
    if (x < -5 || x > list.width() + 5) {
      return;
    }
    list.add(
        new Mark.Path(
            List.of(
                new Mark.Point(x - 5, y),
                new Mark.Point(x, y - 5),
                new Mark.Point(x + 5, y),
                new Mark.Point(x, y + 5)),
            true,
            Optional.of(ink),
            Optional.of(Stroke.thin(RibbonInk.UNLIT))));
  }
}
