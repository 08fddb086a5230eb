package lampwright.app.workshop.view.drawing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.drawing.Dots;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Lamp;

/** Draws what lies over the light: rings around the lamps, leader lines, labels and notes. */
final class CallOutPainter {
  private final Texts texts = Texts.of("drawing");
  private final DrawingModel model;
  private final Inks<Ink> inks;
  private Dots.Frame frame = new Dots.Frame(0, 0, 1, 1);

  CallOutPainter(DrawingModel model, Inks<Ink> inks) {
    this.model = model;
    this.inks = inks;
  }

  /** Takes where the drawing stands in its pane. */
  void frame(Dots.Frame now) {
    frame = now;
  }

  /** Draws rings around the lamps; they change with the rig, not with the ribbons. */
  void sockets(GraphicsContext g, double width, double height) {
    g.clearRect(0, 0, width, height);
    Set<String> chosen = model.bench().selection().lamps();
    for (Lamp lamp : model.drawn()) {
      boolean on = chosen.contains(lamp.id());
      double radius = radius(lamp);
      g.setStroke(inks.of(on ? Ink.LEADER_CHOSEN : Ink.SOCKET));
      g.setLineWidth(on ? 2 : 1);
      g.strokeOval(x(lamp) - radius, y(lamp) - radius, 2 * radius, 2 * radius);
    }
  }

  /**
   * Draws leader lines, labels and notes.
   *
   * @param missing the picture's file, if it can't be read
   */
  void callOuts(GraphicsContext g, double width, double height, Optional<String> missing) {
    g.clearRect(0, 0, width, height);
    Set<String> chosen = model.bench().selection().lamps();
    double size = new Text().getFont().getSize();
    g.setFont(Font.font(size * 0.85));
    Map<String, Lamp> drawn = new HashMap<>();
    model.drawn().forEach(lamp -> drawn.put(lamp.id(), lamp));
    for (DrawingSheet.Row row : model.sheet().rowsProperty().get()) {
      Lamp lamp = drawn.get(row.lamp());
      if (lamp != null) {
        double to = row.centreY() + model.sheet().shiftProperty().get();
        boolean on = chosen.contains(lamp.id());
        leader(g, x(lamp), y(lamp), radius(lamp), to, width, on);
      }
    }
    for (String id : chosen) {
      Lamp lamp = drawn.get(id);
      if (lamp != null) {
        label(g, Titles.of(lamp), x(lamp), y(lamp) - radius(lamp) - 4, width);
      }
    }
    notes(g, width, height, size, missing);
  }

  /** Draws the border of a pane that has the focus. */
  void focus(GraphicsContext g, double width, double height) {
    g.setStroke(inks.of(Ink.LEADER_CHOSEN));
    g.setLineWidth(1);
    g.strokeRect(0.5, 0.5, width - 1, height - 1);
  }

  // Out at a slant, then level to the ribbon, as in call-out drawings.
  private void leader(
      GraphicsContext g, double x, double y, double radius, double to, double width, boolean on) {
    g.setStroke(inks.of(on ? Ink.LEADER_CHOSEN : Ink.LEADER));
    g.setLineWidth(on ? 1.6 : 0.8);
    double bend = Math.max(x + radius + 6, Math.min(width - 14, x + Math.abs(to - y)));
    double angle = Math.atan2(to - y, bend - x);
    g.strokeLine(x + radius * Math.cos(angle), y + radius * Math.sin(angle), bend, to);
    g.strokeLine(bend, to, width, to);
    g.setFill(inks.of(on ? Ink.LEADER_CHOSEN : Ink.LEADER));
    g.fillOval(width - 4, to - 2.5, 5, 5);
  }

  private void label(GraphicsContext g, String text, double x, double bottom, double width) {
    Text measured = new Text(text);
    measured.setFont(g.getFont());
    double w = measured.getLayoutBounds().getWidth();
    double h = measured.getLayoutBounds().getHeight();
    double left = Math.max(2, Math.min(width - w - 8, x - w / 2 - 4));
    double top = Math.max(2, bottom - h - 2);
    g.setFill(inks.of(Ink.LABEL_BACK));
    g.fillRect(left, top, w + 8, h + 2);
    g.setFill(inks.of(Ink.LABEL));
    g.setTextBaseline(VPos.TOP);
    g.setTextAlign(TextAlignment.LEFT);
    g.fillText(text, left + 4, top + 1);
  }

  private void notes(
      GraphicsContext g, double width, double height, double size, Optional<String> missing) {
    g.setFill(inks.of(Ink.LEADER));
    g.setTextBaseline(VPos.BOTTOM);
    g.setTextAlign(TextAlignment.LEFT);
    double y = height - 6;
    List<Lamp> elsewhere = model.elsewhere();
    if (!elsewhere.isEmpty()) {
      g.fillText(texts.get("others", Integer.toString(elsewhere.size())), 8, y, width - 16);
      y -= size * 1.3;
    }
    if (model.waiting().isPresent()) {
      g.fillText(texts.get("unplaced.hint"), 8, y, width - 16);
      y -= size * 1.3;
    }
    if (missing.isPresent()) {
      g.fillText(missing.get(), 8, y, width - 16);
    }
  }

  private double x(Lamp lamp) {
    return frame.atX(lamp.place().orElseThrow());
  }

  private double y(Lamp lamp) {
    return frame.atY(lamp.place().orElseThrow());
  }

  private double radius(Lamp lamp) {
    return Math.max(4, lamp.place().orElseThrow().size() * frame.width() / 2 + 2);
  }
}
