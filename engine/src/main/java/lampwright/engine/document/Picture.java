package lampwright.engine.document;

import java.nio.file.Path;
import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.field.Field;
import lampwright.engine.field.InnerPath;
import lampwright.engine.field.Shape;
import lampwright.engine.rig.View;

/**
 * The builder's own picture of the model, on which the lamps of one view are drawn.
 *
 * @param view the side that it shows
 * @param file where it is, from the project's folder and not outside it, with {@code /} between
 *     folders
 */
public record Picture(View view, String file) {
  private static final InnerPath PATH =
      new InnerPath(
          "picture", List.of(".png", ".jpg", ".jpeg"), List.of("side.png", "pictures/rear.jpg"));

  public static final Field<Picture, View> VIEW =
      Field.required("view", View.TYPE, Picture::view, View.SIDE);
  public static final Field<Picture, String> FILE =
      Field.required("file", PATH.type(), Picture::file, "");

  public static final Shape<Picture> SHAPE = Shape.of("picture", Picture.class, VIEW, FILE);

  public Picture {
    Checks checks = SHAPE.check(view, file);
    PATH.check("file", file, checks);
    checks.done();
  }

  /**
   * Where it is on this machine.
   *
   * @param folder the project's
   * @throws java.nio.file.InvalidPathException if this machine can't have such a name
   */
  public Path in(Path folder) {
    return InnerPath.in(folder, file);
  }
}
