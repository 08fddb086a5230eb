package lampwright.app.picture;

import java.util.Optional;
import lampwright.app.outline.Models;
import lampwright.app.outline.Outline;
import lampwright.app.outline.Tone;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.rig.View;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;

/** The drawing of a model where there is no picture of it. */
public final class ModelDrawing {
  /** What a project that says nothing is drawn as. */
  static final ModelKind USUAL = ModelKind.RECOVERY_VEHICLE;

  private ModelDrawing() {}

  /** One side of a project's model. */
  public static Outline of(Project project, View view) {
    return Models.outline(project.model().orElse(USUAL), view);
  }

  /** Adds one side of a model to a drawing. */
  public static void add(DisplayList.Builder list, Outline outline, Dots.Frame frame) {
    double scale = frame.width() / outline.width();
    for (Outline.Piece piece : outline.pieces()) {
      Tone tone = piece.tone();
      Optional<Ink> fill = tone.isFilled() ? Optional.of(DrawingInk.of(tone)) : Optional.empty();
      Optional<Stroke> stroke =
          tone.lineWidth() > 0
              ? Optional.of(new Stroke(DrawingInk.LINE, tone.lineWidth()))
              : Optional.empty();
      list.add(new Mark.Curves(piece.path().text(), frame.x(), frame.y(), scale, fill, stroke));
    }
  }
}
