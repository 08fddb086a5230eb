package lampwright.exporters.picture;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.SafeText;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FlashSpot;
import lampwright.engine.meter.LightReport;
import lampwright.engine.meter.SceneMeasure;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Scene;

/**
 * The strip chart of a scene: a row for each lamp, its pixels one below the other, time to the
 * right with a scale in seconds, and a mark over each second in which a lamp flashes more often
 * than the flash caution has it.
 */
public final class StripChart {
  /** Width of the strips. */
  public static final int STRIP_WIDTH = 1000;

  /** Where the strips begin. */
  public static final int LEFT = 190;

  /** Room above the first row: title and scale. */
  private static final int TOP = 78;

  private static final int RIGHT = 24;
  private static final int BOTTOM = 40;
  private static final int GAP = 16;

  /** A row is at least high enough for its two lines of words. */
  private static final int LEAST_ROW = 30;

  private static final double TITLE_SIZE = 16;
  private static final double SIZE = 12;
  private static final double SMALL = 10;
  private static final double MARK = 4;

  /** Least distance of two numbers of the scale. */
  private static final double LEAST_STEP = 60;

  private final String project;
  private final FrameTable table;
  private final SceneMeasure measure;
  private final LampStripes stripes;

  private StripChart(String project, FrameTable table, SceneMeasure measure, LampStripes stripes) {
    this.project = project;
    this.table = table;
    this.measure = measure;
    this.stripes = stripes;
  }

  /**
   * Draws a scene.
   *
   * @param project its name
   * @param table frames of the scene
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public static StripChart of(String project, FrameTable table) {
    return new StripChart(
        project, table, SceneMeasure.of(table), LampStripes.of(table, STRIP_WIDTH));
  }

  /** The height of a pixel's strip in a lamp with so many of them. */
  public static int stripeHeight(int pixels) {
    return pixels == 1 ? 16 : pixels <= 8 ? 8 : pixels <= 32 ? 4 : 2;
  }

  private static int rowHeight(int pixels) {
    return Math.max(LEAST_ROW, pixels * stripeHeight(pixels));
  }

  /**
   * Where the strips of a lamp begin, from the upper edge.
   *
   * @param lamp its place in the rig; the number of lamps for where the next would be
   */
  public int top(int lamp) {
    return TOP
        + stripes.lamps().subList(0, lamp).stream().mapToInt(l -> rowHeight(l.size()) + GAP).sum();
  }

  /** The chart. */
  public DisplayList draw() {
    List<Lamp> lamps = table.layout().rig().lamps();
    int end = top(lamps.size()) - GAP;
    var list = new DisplayList.Builder(LEFT + STRIP_WIDTH + RIGHT, end + BOTTOM);
    list.fillRect(0, 0, list.width(), list.height(), ChartInk.PAPER);
    title(list);
    scale(list, end);
    for (int i = 0; i < lamps.size(); i++) {
      row(list, lamps.get(i), top(i), stripes.lamps().get(i));
    }
    // Above all strips, so that no row hides another's.
    for (int i = 0; i < lamps.size(); i++) {
      flashes(list, measure.lights().get(i), top(i));
    }
    caution(list, end + BOTTOM - 16);
    return list.build();
  }

  private void title(DisplayList.Builder list) {
    Scene scene = table.scene();
    list.text(
        8,
        8,
        SafeText.text(project, SafeText.MAX_TEXT) + " \u00b7 " + scene.id(),
        TITLE_SIZE,
        Mark.Height.TOP,
        ChartInk.TEXT,
        LEFT + STRIP_WIDTH * 0.6);
    String facts =
        String.format(
            Locale.ROOT,
            "%s s, %s frames/s, %s",
            plain(seconds()),
            plain(scene.framesPerSecond().doubleValue()),
            scene.loop() ? "repeats" : "plays once");
    list.text(
        LEFT + STRIP_WIDTH * 0.7,
        11,
        facts,
        SIZE,
        Mark.Height.TOP,
        ChartInk.SOFT,
        STRIP_WIDTH * 0.3);
  }

  private double seconds() {
    return table.frameCount() / table.framesPerSecond();
  }

  private static String plain(double value) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros();
    return rounded.toPlainString();
  }

  /** Steps of 1, 2 or 5, so wide that the numbers have room. */
  private void scale(DisplayList.Builder list, int end) {
    double seconds = seconds();
    double least = LEAST_STEP / STRIP_WIDTH * seconds;
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    double step = power;
    for (double factor : new double[] {1, 2, 5, 10}) {
      step = factor * power;
      if (step >= least) {
        break;
      }
    }
    for (int i = 0; i * step <= seconds + 1e-9; i++) {
      double x = LEFT + i * step / seconds * STRIP_WIDTH;
      list.line(x, TOP - 22, x, end, Stroke.thin(ChartInk.GRID));
      list.line(x, TOP - 22, x, TOP - 16, Stroke.thin(ChartInk.SOFT));
      list.centred(x, TOP - 30, plain(i * step) + " s", SMALL, ChartInk.SOFT);
    }
  }

  private static void row(DisplayList.Builder list, Lamp lamp, int top, List<ColourRow> pixels) {
    list.text(
        8,
        top,
        SafeText.text(lamp.title(), SafeText.MAX_TEXT),
        SIZE,
        Mark.Height.TOP,
        ChartInk.TEXT,
        LEFT - 16);
    String what = pixels.size() == 1 ? lamp.id() : lamp.id() + ", " + pixels.size() + " pixels";
    list.text(8, top + 15, what, SMALL, Mark.Height.TOP, ChartInk.SOFT, LEFT - 16);
    int high = stripeHeight(pixels.size());
    for (int p = 0; p < pixels.size(); p++) {
      list.add(new Mark.Strip(LEFT, top + p * high, STRIP_WIDTH, high, pixels.get(p)));
    }
    list.strokeRect(LEFT, top, STRIP_WIDTH, pixels.size() * high, Stroke.thin(ChartInk.SOFT));
  }

  /** A bracket over the worst second. */
  private void flashes(DisplayList.Builder list, LightReport light, int top) {
    FlashSpot general = light.worstGeneral();
    boolean red = light.worstRed().worst().flashes() > general.worst().flashes();
    FlashSpot worst = red ? light.worstRed() : general;
    if (worst.worst().passes()) {
      return;
    }
    double from = LEFT + worst.worst().startSeconds() / seconds() * STRIP_WIDTH;
    double to = Math.min(LEFT + STRIP_WIDTH, from + STRIP_WIDTH / seconds());
    Stroke stroke = new Stroke(ChartInk.WARNING, 2);
    list.line(from, top - 2, to, top - 2, stroke);
    list.line(from, top - 2, from, top + MARK, stroke);
    list.line(to, top - 2, to, top + MARK, stroke);
    list.add(
        new Mark.Label(
            (from + to) / 2, top - 3, words(worst, red), SMALL, ChartInk.WARNING, ChartInk.PAPER));
  }

  private static String words(FlashSpot spot, boolean red) {
    return String.format(
        Locale.ROOT,
        "%d %sflashes in one second; limit %d",
        spot.worst().flashes(),
        red ? "red " : "",
        FlashCaution.MOST_FLASHES);
  }

  private void caution(DisplayList.Builder list, double y) {
    Optional<String> warning =
        measure.passesFlashCaution()
            ? Optional.empty()
            : Optional.of(
                "Marked: more flashes in one second than W3C WCAG 2.2, 2.3.1 has as its limit."
                    + " Flashing light can trigger seizures in people with photosensitive epilepsy.");
    list.add(
        new Mark.Text(
            8,
            y,
            warning.orElse("Colours as a screen shows them, at one exposure for all lamps."),
            SMALL,
            false,
            Mark.Side.LEFT,
            Mark.Height.CENTRE,
            warning.isPresent() ? ChartInk.WARNING : ChartInk.SOFT,
            OptionalDouble.of(LEFT + STRIP_WIDTH)));
  }
}
