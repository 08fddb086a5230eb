package lampwright.app.workshop.model.ribbon;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.LampSigns.Sign;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.picture.TypeMeasure;

/** Draws the titles of the rows in sight: numbers in balloons, names, signs, headings of groups. */
final class TitleDrawing {
  /** From the right edge, room of each sign in pixels. */
  static final double SIGN = 18;

  /** Where names begin; left of it are balloons and folds. */
  static final double NAME_X = 30;

  private static final double BALLOON = 9;

  private final RibbonsModel model;
  private final TypeMeasure measure;
  private final double size;
  private final DisplayList.Builder list;

  TitleDrawing(RibbonsModel model, TypeMeasure measure, double size, DisplayList.Builder list) {
    this.model = model;
    this.measure = measure;
    this.size = size;
    this.list = list;
  }

  /** The sign at a distance from the left in titles of a width. */
  static Optional<Sign> signAt(double x, double width) {
    int index = (int) Math.floor((x - (width - Sign.values().length * SIGN - 2)) / SIGN);
    return Stream.of(Sign.values()).skip(Math.max(0, index)).findFirst().filter(s -> index >= 0);
  }

  void draw(RibbonLayout layout) {
    Set<String> chosen = model.bench().selection().lamps();
    double room = list.width() - NAME_X - Sign.values().length * SIGN - 6;
    ShortNames names = new ShortNames(measure, size, room);
    Map<String, String> shown =
        names.of(layout.rows().stream().map(row -> Titles.of(row.lamp())).toList());
    for (RibbonLayout.Heading heading : layout.headings()) {
      if (inSight(heading.y(), heading.height())) {
        heading(heading);
      }
    }
    for (RibbonLayout.Row row : layout.between(model.top(), model.top() + list.height())) {
      boolean on = chosen.contains(row.lamp().id());
      title(row, on, shown.getOrDefault(Titles.of(row.lamp()), ""), room);
    }
    list.line(
        list.width() - 0.5, 0, list.width() - 0.5, list.height(), Stroke.thin(RibbonInk.LINE));
  }

  private boolean inSight(double y, double height) {
    return y + height > model.top() && y < model.top() + list.height();
  }

  private void heading(RibbonLayout.Heading heading) {
    double y = heading.y() - model.top();
    double middle = y + heading.height() / 2;
    list.fillRect(0, y, list.width(), heading.height(), RibbonInk.HEADING);
    String fold = heading.folded() ? "M10 -4 L14 0 L10 4" : "M8 -2 L12 2 L16 -2";
    curves(fold, 0, middle, Optional.empty(), RibbonInk.TEXT, 1.4);
    String count = count(heading.lamps());
    double small = size * 0.92;
    double right = list.width() - Sign.values().length * SIGN - 8;
    double countX = right - measure.width(count, small);
    // The name is what a group is known by: it has all the room before it is cut.
    boolean counted = NAME_X + measure.width(heading.group(), size) + 8 <= countX;
    String name = new ShortNames(measure, size, right - NAME_X).middle(heading.group());
    text(NAME_X, middle, name, size, true, RibbonInk.TEXT);
    if (counted) {
      text(countX, middle, count, small, false, RibbonInk.TEXT_SOFT);
    }
    List<String> ids = heading.lamps().stream().map(Lamp::id).toList();
    signs(ids, middle);
  }

  /** How many pixels and LEDs these lamps have: {@code 16 px, 1 LED}. */
  static String count(List<Lamp> lamps) {
    Texts texts = Texts.of("ribbons");
    int pixels =
        lamps.stream()
            .filter(lamp -> lamp.fitting() instanceof Fitting.Pixels)
            .mapToInt(lamp -> lamp.fitting().lights())
            .sum();
    long leds = lamps.stream().filter(lamp -> lamp.fitting() instanceof Fitting.Output).count();
    String ofLeds =
        leds == 1 ? texts.get("group.leds.1") : texts.get("group.leds", Long.toString(leds));
    String ofPixels = texts.get("group.pixels", Integer.toString(pixels));
    if (leds == 0) {
      return ofPixels;
    }
    return pixels == 0 ? ofLeds : ofPixels + ", " + ofLeds;
  }

  private void title(RibbonLayout.Row row, boolean on, String name, double room) {
    double y = row.y() - model.top();
    double middle = row.centreY() - model.top();
    if (on) {
      list.fillRect(0, y, list.width(), row.height() - RibbonLayout.GAP / 2, RibbonInk.ROW_CHOSEN);
    }
    RibbonInk ink = on ? RibbonInk.CUE_CHOSEN_EDGE : RibbonInk.TEXT_SOFT;
    Stroke ring = new Stroke(ink, on ? 1.6 : 1);
    list.line(0, middle, 14 - BALLOON, middle, ring);
    list.add(
        new Mark.Ellipse(
            14, middle, BALLOON, BALLOON, Optional.of(RibbonInk.PAPER), Optional.of(ring)));
    list.centred(14, middle, Integer.toString(row.number()), size * 0.85, RibbonInk.TEXT);
    boolean two = row.stripHeight() + row.laneHeight() >= 2.3 * size;
    double line = two ? middle - size * 0.75 : middle;
    text(NAME_X, line, name, size, on, RibbonInk.TEXT);
    if (two) {
      String where = new ShortNames(measure, size * 0.92, room).middle(where(row.lamp()));
      text(NAME_X, line + size * 1.15, where, size * 0.92, false, RibbonInk.TEXT_SOFT);
    }
    signs(List.of(row.lamp().id()), middle);
  }

  /** Where a lamp is in the rig: {@code roof 0–3}. */
  static String where(Lamp lamp) {
    if (lamp.fitting() instanceof Fitting.Pixels pixels) {
      return pixels.runs().stream()
          .map(
              run ->
                  run.count() == 1
                      ? run.chain() + " " + run.from()
                      : run.chain() + " " + run.from() + "–" + (run.end() - 1))
          .collect(Collectors.joining(", "));
    }
    return ((Fitting.Output) lamp.fitting()).output();
  }

  private void signs(List<String> lamps, double middle) {
    LampSigns now = model.sheet().signs();
    double x = list.width() - Sign.values().length * SIGN - 2 + SIGN / 2;
    for (Sign sign : Sign.values()) {
      sign(sign, x, middle, lamps.stream().allMatch(lamp -> now.has(sign, lamp)));
      x += SIGN;
    }
  }

  // A cap over the lamp, the lamp alone with its rays, a padlock; filled where it is on.
  private void sign(Sign sign, double x, double y, boolean on) {
    RibbonInk ink = on ? RibbonInk.TEXT : RibbonInk.SIGN;
    Optional<Ink> fill = on ? Optional.of(ink) : Optional.empty();
    switch (sign) {
      case MUTE -> {
        curves("M-5 0 A5 5 0 0 1 5 0 Z", x, y, fill, ink, 1.2);
        curves("M-6.5 0 L6.5 0 M-3 2.5 L3 2.5", x, y, Optional.empty(), ink, 1.2);
      }
      case SOLO -> {
        curves("M-2.5 0 A2.5 2.5 0 1 1 2.5 0 A2.5 2.5 0 1 1 -2.5 0 Z", x, y, fill, ink, 1.2);
        curves(
            "M-6.5 0 L-4.5 0 M6.5 0 L4.5 0 M0 -6.5 L0 -4.5 M0 6.5 L0 4.5",
            x,
            y,
            Optional.empty(),
            ink,
            1.2);
      }
      case LOCK -> {
        curves("M-4 -0.5 L4 -0.5 L4 5 L-4 5 Z", x, y, fill, ink, 1.2);
        String shackle =
            on
                ? "M-2.5 -0.5 L-2.5 -3 A2.5 2.5 0 0 1 2.5 -3 L2.5 -0.5"
                : "M-2.5 -0.5 L-2.5 -3 A2.5 2.5 0 0 1 2.5 -3";
        curves(shackle, x, y, Optional.empty(), ink, 1.2);
      }
    }
  }

  private void curves(
      String data, double x, double y, Optional<Ink> fill, RibbonInk ink, double line) {
    list.add(new Mark.Curves(data, x, y, 1, fill, Optional.of(new Stroke(ink, line))));
  }

  private void text(double x, double y, String text, double type, boolean bold, RibbonInk ink) {
    list.add(
        new Mark.Text(
            x,
            y,
            text,
            type,
            bold,
            Mark.Side.LEFT,
            Mark.Height.CENTRE,
            ink,
            OptionalDouble.empty()));
  }
}
