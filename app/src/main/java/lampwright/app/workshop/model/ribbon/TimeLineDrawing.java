package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.model.FrameRange;
import lampwright.engine.scene.Marker;
import lampwright.engine.scene.Scene;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.picture.TypeMeasure;

/** Draws the time line: flags of the markers, the range that is looped, and the ruler below. */
final class TimeLineDrawing {
  private static final Stroke LINE = Stroke.thin(RibbonInk.CUE_EDGE);

  private final RibbonsModel model;
  private final TypeMeasure measure;
  private final double size;
  private final DisplayList.Builder list;

  private TimeLineDrawing(
      RibbonsModel model, TypeMeasure measure, double size, DisplayList.Builder list) {
    this.model = model;
    this.measure = measure;
    this.size = size;
    this.list = list;
  }

  static DisplayList of(
      RibbonsModel model, TypeMeasure measure, double size, double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.PAPER);
    TimeLineDrawing drawing = new TimeLineDrawing(model, measure, size, list);
    drawing.ruler();
    model.bench().scene().ifPresent(drawing::scene);
    return list.build();
  }

  /** Height of the flags: half of a time line. */
  static double flags(double height) {
    return Math.rint(height * 0.45);
  }

  private void ruler() {
    double height = list.height();
    double top = flags(height);
    for (TimeAxis.Tick tick : model.axis().ticks(list.width())) {
      double x = Math.round(model.axis().x(tick.ms())) + 0.5;
      boolean named = !tick.label().isEmpty();
      list.line(x, named ? height - 9 : height - 5, x, height, LINE);
      if (named) {
        list.text(x + 3, top + 1, tick.label(), size * 0.92, Mark.Height.TOP, RibbonInk.TEXT_SOFT);
      }
    }
    list.line(0, height - 0.5, list.width(), height - 0.5, LINE);
  }

  private void scene(Scene scene) {
    model.range().ifPresent(range -> range(scene, range));
    for (Marker marker : scene.markers()) {
      flag(marker, model.markerProperty().get().filter(marker::equals).isPresent());
    }
    double end = model.axis().x(scene.lengthMs().doubleValue());
    double bottom = list.height();
    list.add(
        new Mark.Path(
            List.of(
                new Mark.Point(end, bottom),
                new Mark.Point(end - 7, bottom),
                new Mark.Point(end, bottom - 9)),
            true,
            Optional.of(RibbonInk.CUE_CHOSEN_EDGE),
            Optional.empty()));
  }

  // A hatched band with brackets at its ends.
  private void range(Scene scene, FrameRange range) {
    double from = model.axis().x(CueEdits.frameMs(scene, range.from()).doubleValue());
    double to = model.axis().x(CueEdits.frameMs(scene, range.to()).doubleValue());
    double bottom = list.height() - 1;
    double top = bottom - 7;
    Stroke brass = new Stroke(RibbonInk.CUE_CHOSEN_EDGE, 1);
    double left = Math.max(from, 0);
    double right = Math.min(to, list.width());
    for (double x = left; x + 5 <= right; x += 5) {
      list.line(x, bottom, x + 5, top, brass);
    }
    if (right > left) {
      list.fillRect(left, bottom - 1, right - left, 2, RibbonInk.CUE_CHOSEN_EDGE);
    }
    for (double x : new double[] {from, to}) {
      list.fillRect(Math.rint(x) - 1, top - 2, 2, bottom - top + 3, RibbonInk.CUE_CHOSEN_EDGE);
    }
  }

  private void flag(Marker marker, boolean on) {
    double x = Math.round(model.axis().x(marker.atMs().doubleValue())) + 0.5;
    if (x < -300 || x > list.width() + 5) {
      return;
    }
    double high = flags(list.height());
    double small = size * 0.92;
    double wide = width(marker, measure, small);
    Stroke line = new Stroke(on ? RibbonInk.CUE_CHOSEN_EDGE : RibbonInk.CUE_EDGE, on ? 2 : 1);
    list.line(x, 1, x, list.height(), line);
    list.add(
        new Mark.Path(
            List.of(
                new Mark.Point(x, 1),
                new Mark.Point(x + wide, 1),
                new Mark.Point(x + wide - 5, high / 2),
                new Mark.Point(x + wide, high - 1),
                new Mark.Point(x, high - 1)),
            true,
            Optional.of(RibbonInk.HEADING),
            Optional.of(line)));
    list.text(x + 5, high / 2, marker.name(), small, Mark.Height.CENTRE, RibbonInk.TEXT);
  }

  /** How wide a marker's flag is. */
  static double width(Marker marker, TypeMeasure measure, double small) {
    return Math.max(16, measure.width(marker.name(), small) + 16);
  }
}
