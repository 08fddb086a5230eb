package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;

/** What is done to pixel types of the project's own; the chains that have them follow. */
public final class PixelTypeEdits {
  private PixelTypeEdits() {}

  /** Adds a pixel type of one's own: a copy of another. */
  public static Project add(Project project, PixelType of) {
    List<PixelType> types = new ArrayList<>(project.pixelTypes());
    String id = Projects.freeId("my-pixels", types.stream().map(PixelType::id).toList());
    types.add(PixelType.ID.with(of, id));
    return Project.PIXEL_TYPES.with(project, types);
  }

  /** Changes a pixel type of one's own, and the chains that have it. */
  public static Project change(Project project, String id, UnaryOperator<PixelType> change) {
    List<PixelType> types =
        project.pixelTypes().stream().map(t -> t.id().equals(id) ? change.apply(t) : t).toList();
    List<Chain> chains =
        project.rig().chains().stream()
            .map(
                c ->
                    c.type().id().equals(id)
                        ? c.withType(change.apply(c.type()), c.order(), c.whiteKelvin())
                        : c)
            .toList();
    return Project.SHAPE
        .draft(project)
        .set(Project.PIXEL_TYPES, types)
        .set(Project.RIG, Rig.CHAINS.with(project.rig(), chains))
        .make();
  }
}
