package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.scene.Scene;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.picture.TypeMeasure;

/** Draws the ribbons that are in sight. */
public final class RibbonDrawing {
  /** Height of a stripe from which a line parts it from the next, in pixels. */
  private static final double LEAST_APART = 3;

  private final RibbonsModel model;
  private final TypeMeasure measure;
  private final double size;

  /**
   * @param measure of the type
   * @param size of the type, in pixels
   */
  public RibbonDrawing(RibbonsModel model, TypeMeasure measure, double size) {
    this.model = model;
    this.measure = measure;
    this.size = size;
  }

  /** The titles of the rows in sight; sizes in pixels. */
  public DisplayList titles(double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.PAPER);
    TitleDrawing titles = new TitleDrawing(model, measure, size, list);
    model.layout().ifPresent(titles::draw);
    return list.build();
  }

  /** The time line; sizes in pixels. */
  public DisplayList timeLine(double width, double height) {
    return TimeLineDrawing.of(model, measure, size, width, height);
  }

  /** The rows in sight; sizes in pixels. */
  public DisplayList rows(double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.PAPER);
    Optional<Scene> scene = model.bench().scene();
    if (model.layout().isEmpty() || scene.isEmpty()) {
      return list.build();
    }
    RibbonLayout layout = model.layout().get();
    for (RibbonLayout.Heading heading : layout.headings()) {
      double y = heading.y() - model.top();
      if (y < height && y + heading.height() > 0) {
        list.fillRect(0, y, width, heading.height(), RibbonInk.HEADING);
        if (heading.folded()) {
          strip(list, heading.lights(), y + 3, heading.height() - 6);
          if (heading.lamps().stream().noneMatch(l -> model.sheet().signs().shows(l.id()))) {
            list.fillRect(0, y + 3, width, heading.height() - 6, RibbonInk.PAST_END);
          }
        }
      }
    }
    Set<String> lamps = model.bench().selection().lamps();
    LaneDrawing lanes = new LaneDrawing(model, scene.get(), list, measure, size);
    for (RibbonLayout.Row row : layout.between(model.top(), model.top() + height)) {
      double y = row.y() - model.top();
      if (lamps.contains(row.lamp().id())) {
        list.fillRect(0, y, width, row.height() - RibbonLayout.GAP / 2, RibbonInk.ROW_CHOSEN);
      }
      double top = row.stripY() - model.top();
      strip(list, row.lights(), top, row.stripHeight());
      if (!model.sheet().signs().shows(row.lamp().id())) {
        list.fillRect(0, top, width, row.stripHeight(), RibbonInk.PAST_END);
      }
      for (int lane = 0; lane < row.lanes().size(); lane++) {
        lanes.lane(row, lane);
      }
      if (row.curves() > 0) {
        CurveDrawing.add(list, model, row, size * 0.85);
      }
    }
    double end = model.axis().x(scene.get().lengthMs().doubleValue());
    if (end < width) {
      double from = Math.max(0, end);
      list.fillRect(from, 0, width - from, height, RibbonInk.PAST_END);
      double x = Math.round(end) + 0.5;
      list.line(x, 0, x, height, Stroke.thin(RibbonInk.CUE_CHOSEN_EDGE));
    }
    return list.build();
  }

  // A strip that was painted for another look at time is stretched until the next one is there.
  private void strip(DisplayList.Builder list, List<Integer> lights, double y, double height) {
    list.fillRect(0, y, list.width(), height, RibbonInk.UNLIT);
    Strip strip = model.stripsProperty().get().get(lights);
    if (strip != null) {
      TimeAxis axis = model.axis();
      double x = axis.x(strip.axis().leftMs());
      double shown = strip.width() * strip.axis().msPerPixel() / axis.msPerPixel();
      int count = strip.stripes().size();
      for (int i = 0; i < count; i++) {
        // To whole pixels, so that none is blurred; with a pixel of film between where there is
        // room.
        double top = Math.rint(y + height * i / count);
        double bottom = Math.rint(y + height * (i + 1) / count);
        double gap = bottom - top >= LEAST_APART && i + 1 < count ? 1 : 0;
        list.add(new Mark.Strip(x, top, shown, bottom - top - gap, strip.stripes().get(i)));
      }
    }
  }
}
