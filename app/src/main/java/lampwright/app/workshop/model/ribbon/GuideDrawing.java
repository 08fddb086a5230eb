package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.model.sound.Guide;
import lampwright.app.workshop.sound.SoundClip;
import lampwright.app.workshop.sound.Waveform;
import lampwright.engine.scene.GuideSound;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.picture.TypeMeasure;

/** Draws the guide sound: its title, and its waveform on the time scale of the ribbons. */
public final class GuideDrawing {
  private static final double ROOM = 3;

  private final Guide guide;
  private final TimeAxis axis;
  private final TypeMeasure measure;
  private final double size;

  /**
   * @param measure of the type
   * @param size of the type, in pixels
   */
  public GuideDrawing(Guide guide, TimeAxis axis, TypeMeasure measure, double size) {
    this.guide = guide;
    this.axis = axis;
    this.measure = measure;
    this.size = size;
  }

  /** Whether the loudspeaker is at a distance from the left in titles of a width. */
  public static boolean onSign(double x, double width) {
    return x >= width - TitleDrawing.SIGN - 4;
  }

  /** Its title; sizes in pixels. */
  public DisplayList title(double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.HEADING);
    double room = width - TitleDrawing.NAME_X - TitleDrawing.SIGN - 8;
    double small = size * 0.92;
    String name = new ShortNames(measure, size, room).middle(guide.name());
    String state = new ShortNames(measure, small, room).middle(guide.state());
    double line = height / 2 - size * 0.6;
    list.text(TitleDrawing.NAME_X, line, name, size, Mark.Height.CENTRE, RibbonInk.TEXT);
    list.text(
        TitleDrawing.NAME_X,
        line + size * 1.2,
        state,
        small,
        Mark.Height.CENTRE,
        guide.track().faultProperty().get().isPresent() ? RibbonInk.TEXT : RibbonInk.TEXT_SOFT);
    // A note's head, stem and flag.
    curves(list, "M-1 4 A3 2.4 0 1 1 -1 3.9 Z", 13, height / 2, Optional.of(RibbonInk.TEXT_SOFT));
    curves(list, "M-1.5 4 L-1.5 -6 C1 -4 3 -4 3.5 -1", 13, height / 2, Optional.empty());
    loudspeaker(list, width - TitleDrawing.SIGN / 2 - 4, height / 2);
    list.line(width - 0.5, 0, width - 0.5, height, Stroke.thin(RibbonInk.LINE));
    return list.build();
  }

  // With its waves while it is heard, crossed out while it is not.
  private void loudspeaker(DisplayList.Builder list, double x, double y) {
    boolean muted = guide.track().mutedProperty().get();
    Optional<Ink> body = muted ? Optional.empty() : Optional.of(RibbonInk.TEXT_SOFT);
    curves(list, "M-7 -2 L-4.5 -2 L-1 -5 L-1 5 L-4.5 2 L-7 2 Z", x, y, body);
    String beside =
        muted ? "M2 -3 L8 3 M8 -3 L2 3" : "M2 -2.5 A3.5 3.5 0 0 1 2 2.5 M4 -5 A7 7 0 0 1 4 5";
    curves(list, beside, x, y, Optional.empty());
  }

  private static void curves(
      DisplayList.Builder list, String data, double x, double y, Optional<Ink> fill) {
    Stroke line = new Stroke(RibbonInk.TEXT_SOFT, 1.2);
    list.add(new Mark.Curves(data, x, y, 1, fill, Optional.of(line)));
  }

  /**
   * Its waveform; sizes in pixels.
   *
   * @param endMs of the scene
   */
  public DisplayList wave(double endMs, double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    list.fillRect(0, 0, width, height, RibbonInk.PAPER);
    double middle = height / 2;
    list.line(0, middle, width, middle, Stroke.thin(RibbonInk.LINE));
    Optional<SoundClip> clip = guide.track().clip();
    Optional<GuideSound> sound = guide.track().sound();
    if (clip.isPresent() && sound.isPresent()) {
      wave(list, clip.get(), sound.get().startMs().doubleValue());
    }
    double end = axis.x(endMs);
    if (end < width) {
      double from = Math.max(0, end);
      list.fillRect(from, 0, width - from, height, RibbonInk.PAST_END);
    }
    list.line(0, height - 0.5, width, height - 0.5, Stroke.thin(RibbonInk.LINE));
    return list.build();
  }

  // One shape: along the upper edge and back along the lower one.
  private void wave(DisplayList.Builder list, SoundClip clip, double startMs) {
    double left = Math.max(0, Math.floor(axis.x(startMs)));
    double right = Math.min(list.width(), Math.ceil(axis.x(startMs + clip.lengthMs())));
    if (right - left < 1) {
      return;
    }
    double middle = list.height() / 2;
    double half = middle - ROOM;
    List<Mark.Point> upper = new ArrayList<>();
    List<Mark.Point> lower = new ArrayList<>();
    for (double x = left; x <= right; x++) {
      double ms = axis.ms(x) - startMs;
      Waveform.Span span = clip.waveform().between(ms, ms + axis.msPerPixel());
      upper.add(new Mark.Point(x, middle - Math.max(span.greatest() * half, 0.5)));
      lower.add(new Mark.Point(x, middle - Math.min(span.least() * half, -0.5)));
    }
    Collections.reverse(lower);
    upper.addAll(lower);
    RibbonInk ink = guide.track().mutedProperty().get() ? RibbonInk.LINE : RibbonInk.WAVE;
    list.add(new Mark.Path(upper, true, Optional.of(ink), Optional.empty()));
    for (double edge : new double[] {axis.x(startMs), axis.x(startMs + clip.lengthMs())}) {
      if (edge >= 0 && edge <= list.width()) {
        double x = Math.round(edge) + 0.5;
        list.line(x, 2, x, list.height() - 2, Stroke.thin(RibbonInk.CUE_EDGE));
      }
    }
  }
}
