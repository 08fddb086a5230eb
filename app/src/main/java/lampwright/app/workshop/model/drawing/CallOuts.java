package lampwright.app.workshop.model.drawing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lampwright.app.picture.Dots;
import lampwright.app.picture.DrawingInk;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;

/** Draws what lies over the light: rings around the lamps, leader lines, labels and notes. */
public final class CallOuts {
  private final Texts texts = Texts.of("drawing");
  private final DrawingModel model;
  private final Dots.Frame frame;
  private final double width;
  private final double height;

  /**
   * @param frame where the drawing stands in its pane
   * @param width of the pane, in pixels
   * @param height of the pane, in pixels
   */
  public CallOuts(DrawingModel model, Dots.Frame frame, double width, double height) {
    this.model = model;
    this.frame = frame;
    this.width = width;
    this.height = height;
  }

  /** Rings around the lamps; they change with the rig, not with the ribbons. */
  public DisplayList sockets() {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    Set<String> chosen = model.bench().selection().lamps();
    for (Lamp lamp : model.drawn()) {
      boolean on = chosen.contains(lamp.id());
      if (!on && pixels(lamp) > 1) {
        // Its pixels are drawn where they are; a ring around all of them would hide the model.
        continue;
      }
      Stroke ring = new Stroke(on ? DrawingInk.LEADER_CHOSEN : DrawingInk.SOCKET, on ? 2 : 1);
      double radius = radius(lamp);
      list.add(
          new Mark.Ellipse(x(lamp), y(lamp), radius, radius, Optional.empty(), Optional.of(ring)));
    }
    return list.build();
  }

  /**
   * Leader lines, labels and notes.
   *
   * @param em height of a line of text, in pixels
   * @param missing the picture's file, if it can't be read
   * @param focus whether the pane has the focus, and so a border
   */
  public DisplayList over(double em, Optional<String> missing, boolean focus) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    Set<String> chosen = model.bench().selection().lamps();
    Map<String, Lamp> drawn = new HashMap<>();
    model.drawn().forEach(lamp -> drawn.put(lamp.id(), lamp));
    for (DrawingSheet.Row row : model.sheet().rowsProperty().get()) {
      Lamp lamp = drawn.get(row.lamp());
      // What is out of sight has no line that begins somewhere.
      if (lamp != null && frameHas(lamp)) {
        double to = row.centreY() + model.sheet().shiftProperty().get();
        leader(list, lamp, to, chosen.contains(lamp.id()));
      }
    }
    for (String id : chosen) {
      Lamp lamp = drawn.get(id);
      if (lamp != null) {
        list.add(
            new Mark.Label(
                x(lamp),
                y(lamp) - radius(lamp) - 4,
                Titles.of(lamp),
                em * 0.85,
                DrawingInk.LABEL,
                DrawingInk.LABEL_BACK));
      }
    }
    notes(list, em, missing);
    if (focus) {
      list.strokeRect(0.5, 0.5, width - 1, height - 1, Stroke.thin(DrawingInk.LEADER_CHOSEN));
    }
    return list.build();
  }

  private boolean frameHas(Lamp lamp) {
    return x(lamp) >= 0 && x(lamp) <= width && y(lamp) >= 0 && y(lamp) <= height;
  }

  // Out at a slant, then level to the ribbon, as in call-out drawings.
  private void leader(DisplayList.Builder list, Lamp lamp, double to, boolean on) {
    double x = x(lamp);
    double y = y(lamp);
    double radius = radius(lamp);
    Ink ink = on ? DrawingInk.LEADER_CHOSEN : DrawingInk.LEADER;
    Stroke line = new Stroke(ink, on ? 1.6 : 0.8);
    double bend = Math.max(x + radius + 6, Math.min(width - 14, x + Math.abs(to - y)));
    double angle = Math.atan2(to - y, bend - x);
    list.line(x + radius * Math.cos(angle), y + radius * Math.sin(angle), bend, to, line);
    list.line(bend, to, width, to, line);
    list.add(new Mark.Ellipse(width - 1.5, to, 2.5, 2.5, Optional.of(ink), Optional.empty()));
  }

  private void notes(DisplayList.Builder list, double em, Optional<String> missing) {
    double y = height - 6;
    List<Lamp> elsewhere = model.elsewhere();
    if (!elsewhere.isEmpty()) {
      note(list, y, em, texts.get("others", Integer.toString(elsewhere.size())));
      y -= em * 1.3;
    }
    if (model.waiting().isPresent()) {
      note(list, y, em, texts.get("unplaced.hint"));
      y -= em * 1.3;
    }
    if (missing.isPresent()) {
      note(list, y, em, missing.get());
    }
  }

  private void note(DisplayList.Builder list, double y, double em, String text) {
    list.text(8, y, text, em * 0.85, Mark.Height.BOTTOM, DrawingInk.LEADER, width - 16);
  }

  private Place place(Lamp lamp) {
    return lamp.placeIn(model.view()).orElseThrow();
  }

  private double x(Lamp lamp) {
    return frame.atX(place(lamp));
  }

  private double y(Lamp lamp) {
    return frame.atY(place(lamp));
  }

  private static int pixels(Lamp lamp) {
    return lamp.fitting() instanceof Fitting.Pixels fitting
        ? fitting.runs().stream().mapToInt(PixelRun::count).sum()
        : 1;
  }

  private double radius(Lamp lamp) {
    return Math.max(4, place(lamp).size() * frame.width() / 2 + 2);
  }
}
