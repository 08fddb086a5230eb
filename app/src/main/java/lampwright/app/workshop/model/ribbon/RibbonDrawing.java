package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lampwright.app.picture.DisplayList;
import lampwright.app.picture.Mark;
import lampwright.app.picture.Stroke;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.scene.Scene;

/** Draws the ribbons that are in sight. */
public final class RibbonDrawing {
  private static final Stroke LINE = Stroke.thin(RibbonInk.LINE);

  /** Height of a stripe from which a line parts it from the next, in pixels. */
  private static final double LEAST_APART = 3;

  private final RibbonsModel model;
  private final double size;

  /**
   * @param size of the type, in pixels
   */
  public RibbonDrawing(RibbonsModel model, double size) {
    this.model = model;
    this.size = size;
  }

  /** The titles of the rows in sight; sizes in pixels. */
  public DisplayList titles(double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.PAPER);
    Set<String> chosen = model.bench().selection().lamps();
    for (RibbonLayout.Row row : inSight(height)) {
      title(list, row, chosen.contains(row.lamp().id()));
    }
    return list.line(width - 0.5, 0, width - 0.5, height, LINE).build();
  }

  private List<RibbonLayout.Row> inSight(double height) {
    return model.layout().map(l -> l.between(model.top(), model.top() + height)).orElse(List.of());
  }

  private void title(DisplayList.Builder list, RibbonLayout.Row row, boolean on) {
    double y = row.y() - model.top();
    Lamp lamp = row.lamp();
    if (on) {
      list.fillRect(0, y, list.width(), row.height() - 3, RibbonInk.ROW_CHOSEN);
    }
    double middle = y + row.stripHeight() / 2;
    String fold = model.isUnfolded(lamp.id()) ? "▾" : "▸";
    list.text(4, middle, fold, size, Mark.Height.CENTRE, RibbonInk.TEXT);
    double room = list.width() - 24;
    shortened((on ? "● " : "") + Titles.of(lamp), size, room)
        .ifPresent(
            text ->
                list.add(
                    new Mark.Text(
                        18,
                        middle,
                        text,
                        size,
                        on,
                        Mark.Side.LEFT,
                        Mark.Height.CENTRE,
                        RibbonInk.TEXT,
                        OptionalDouble.empty())));
    if (lamp.function() != LampFunction.OTHER) {
      small(
          list,
          Titles.of(lamp.function()),
          18,
          y + row.stripHeight() + row.laneHeight() / 2,
          room,
          RibbonInk.TEXT_SOFT);
    }
  }

  private void small(
      DisplayList.Builder list, String text, double x, double y, double room, RibbonInk ink) {
    double small = size * 0.85;
    shortened(text, small, room)
        .ifPresent(cut -> list.text(x, y, cut, small, Mark.Height.CENTRE, ink));
  }

  // By an estimate of the letters' width: nothing here can measure type.
  private static Optional<String> shortened(String text, double size, double width) {
    int room = (int) (width / (size * 0.56));
    if (room >= text.length()) {
      return Optional.of(text);
    }
    return room >= 2 ? Optional.of(text.substring(0, room - 1) + "…") : Optional.empty();
  }

  /** The time line; sizes in pixels. */
  public DisplayList timeLine(double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.PAPER);
    TimeAxis axis = model.axis();
    for (TimeAxis.Tick tick : axis.ticks(width)) {
      double x = Math.round(axis.x(tick.ms())) + 0.5;
      boolean named = !tick.label().isEmpty();
      list.line(x, named ? height * 0.35 : height * 0.75, x, height, LINE);
      if (named) {
        list.text(x + 3, 2, tick.label(), size * 0.85, Mark.Height.TOP, RibbonInk.TEXT_SOFT);
      }
    }
    model.bench().scene().ifPresent(scene -> end(list, scene));
    return list.line(0, height - 0.5, width, height - 0.5, LINE).build();
  }

  private void end(DisplayList.Builder list, Scene scene) {
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

  /** The rows in sight; sizes in pixels. */
  public DisplayList rows(double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.PAPER);
    Optional<Scene> scene = model.bench().scene();
    if (model.layout().isEmpty() || scene.isEmpty()) {
      return list.build();
    }
    Set<String> lamps = model.bench().selection().lamps();
    LaneDrawing lanes = new LaneDrawing(model, scene.get(), list, this::small);
    for (RibbonLayout.Row row : inSight(height)) {
      double y = row.y() - model.top();
      if (lamps.contains(row.lamp().id())) {
        list.fillRect(0, y, width, row.height() - 3, RibbonInk.ROW_CHOSEN);
      }
      strip(list, row, y);
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
  private void strip(DisplayList.Builder list, RibbonLayout.Row row, double y) {
    double height = row.stripHeight() - 4;
    list.fillRect(0, y + 2, list.width(), height, RibbonInk.UNLIT);
    Map<Integer, Strip> strips = model.stripsProperty().get();
    Strip strip = strips.get(row.index());
    if (strip != null) {
      TimeAxis axis = model.axis();
      double x = axis.x(strip.axis().leftMs());
      double shown = strip.width() * strip.axis().msPerPixel() / axis.msPerPixel();
      int count = strip.stripes().size();
      for (int i = 0; i < count; i++) {
        // To whole pixels, so that none is blurred; with a pixel of film between where there is
        // room.
        double top = Math.rint(y + 2 + height * i / count);
        double bottom = Math.rint(y + 2 + height * (i + 1) / count);
        double gap = bottom - top >= LEAST_APART && i + 1 < count ? 1 : 0;
        list.add(new Mark.Strip(x, top, shown, bottom - top - gap, strip.stripes().get(i)));
      }
    }
  }
}
